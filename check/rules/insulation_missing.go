package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/insulation"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleInsulationMissing)

var ruleInsulationMissing = check.Rule{
	ID: "insulation-missing", Group: check.Insulation, Severity: lang.Warning, Since: "0.2",
	Summary: "A warm pipe has no insulation, and nothing says that it stays bare on purpose.",
	Why:     "The plant room overheats, the pipe burns who touches it, and the heat is paid for all year.",
	Mend:    "cover the pipe, or say why it stays bare",
	Sources: sources(insulation.SourceLimits),
	Run: func(p *check.Pass) {
		if p.Plant.Block("insulation") == nil {
			return
		}
		for _, part := range solve.WarmPipes(p.Plant) {
			if solve.Cover(p.Plant, part) != nil || solve.Bare(p.Plant, part) != nil {
				continue
			}
			p.Absent(part, "its insulation", check.Finding{Message: part.Label() + " has no insulation."})
		}
	},
}

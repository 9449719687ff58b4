package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleOutputForOtherTemperatures)

var ruleOutputForOtherTemperatures = check.Rule{
	ID: "output-for-other-temperatures", Group: check.Capacity, Severity: lang.Warning, Since: "0.1",
	Summary: "No output is stated for the flow and return temperature of the plant.",
	Why:     "An output at 50/30 is eight to ten per cent more than the same unit gives at 80/60.",
	Mend:    "state the output at the temperatures of the plant",
	Sources: sources(cite.Source{Work: "output depends on the return temperature of a condensing unit", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		if !p.Plant.Block("basis").Get("primary").Known() {
			return
		}
		said := map[*plant.Part]bool{}
		for _, u := range p.Plant.Units() {
			v, exact := solve.UnitOutput(p.Plant, u)
			if exact || !v.Known() || said[u.Type] && u.Type != nil {
				continue
			}
			said[u.Type] = true
			primary := p.Plant.Block("basis").Get("primary")
			p.Report(u, check.Finding{Found: p.In(v.Num, powerUnit(p.Plant)) + " at the nearest temperatures", Limit: "an output at " + lang.Num(primary.Num, 4) + "/" + lang.Num(primary.Num2, 4) + " degC", Message: "No output of " + u.Label() + " is stated for " + lang.Num(primary.Num, 4) + "/" + lang.Num(primary.Num2, 4) + " degC."})
		}
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/lang"
)

var _ = register(&ruleSimultaneousMissing)

var ruleSimultaneousMissing = check.Rule{
	ID: "simultaneous-missing", Group: check.Record, Severity: lang.Warning, Since: "0.2",
	Summary: "The gas pressure with all units firing was not measured.",
	Why:     "A gas pipe that is too small shows only when all units fire together.",
	Mend:    "fire all units and read the pressure at the last unit",
	Sources: sources(sourceExamine),
	Run: func(p *check.Pass) {
		done := commissioned(p.Plant)
		if len(done) < 2 || len(p.Plant.ByKind("not-commissioned")) > 0 {
			return // one unit alone, or not all are there yet
		}
		for _, s := range p.Plant.ByKind("simultaneous") {
			if len(s.Children("inlet")) > 0 {
				return
			}
		}
		p.Absent(p.Plant.One("record"), "the pressures with all units firing", check.Finding{Message: "The gas pressure with all units firing was not measured."})
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleUnitUndrained)

var ruleUnitUndrained = check.Rule{
	ID: "unit-undrained", Group: check.Pressure, Severity: lang.Error, Device: true, Since: "0.2",
	Summary: "A unit between its isolating valves has no drain or no air vent.",
	Why:     "The unit cannot be emptied for work or filled again without opening it under pressure.",
	Mend:    "add a drain cock and a vent between the isolating valves",
	Sources: sources(cite.Source{Work: "sections that can be shut off are drained, vented and relieved", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		for _, u := range p.Plant.Units() {
			if valves, _ := stands(u, "water-valve"); !valves {
				continue
			}
			for _, need := range [...]struct{ kind, name string }{{"drain-cock", "drain cock"}, {"vent", "air vent"}} {
				switch there, open := stands(u, need.kind); {
				case open:
					p.Unknown(u, "the "+need.name+" of "+u.Label())
				case !there:
					p.Absent(u, "the "+need.name+" of "+u.Label(), check.Finding{Message: u.Label() + " can be shut off, but has no " + need.name + "."})
				}
			}
		}
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleWiredToAnotherUnit)

var ruleWiredToAnotherUnit = check.Rule{
	ID: "wired-to-another-unit", Group: check.Electrical, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "A part of one unit is wired to another.",
	Why:     "The wrong unit opens the damper or starts the pump.",
	Mend:    "wire the part to its own unit",
	Sources: sources(cite.Source{Work: "each part answers to its own unit", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		for _, w := range p.Plant.ByKind("wire") {
			from, to := w.Subjects(), w.Refs("to")
			if len(to) == 0 {
				continue
			}
			for i, s := range from {
				unit := s.Part.Owner
				if unit == nil || unit.Kind != "unit" {
					continue
				}
				target := to[0].Part
				if len(to) == len(from) {
					target = to[i].Part
				}
				if target.Kind == "unit" && target != unit {
					p.Report(w, check.Finding{Part: s.Part.Address(), Message: "The " + s.Part.Kind + " of " + unit.Label() + " is wired to " + target.Label() + "."})
				}
			}
		}
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleFlueUndrained)

var ruleFlueUndrained = check.Rule{
	ID: "flue-undrained", Group: check.Condensate, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "A common flue has no trap.",
	Why:     "The condensate of the header runs into a unit or stands in the flue.",
	Mend:    "drain the header through a trap of its own",
	Sources: sources(cite.Source{Work: "condensate collects at the low point of a flue", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		for _, fl := range p.Plant.ByKind("flue") {
			for _, h := range fl.Children("flue-header") {
				drained := false
				for _, t := range p.Plant.ByKind("flue-trap") {
					for _, r := range t.Refs("from") {
						drained = drained || r.Part == h || r.Part == fl
					}
				}
				if !drained {
					missing(p, h, "the trap of "+h.Label(), check.Finding{Message: h.Label() + " has no trap to drain its condensate."}, "flue-trap")
				}
			}
		}
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleUnitWithoutFlue)

var ruleUnitWithoutFlue = check.Rule{
	ID: "unit-without-flue", Group: check.Flue, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "A unit is not connected to a flue.",
	Why:     "Its products end in the plant room.",
	Mend:    "connect the unit to a flue",
	Sources: sources(cite.Source{Work: "a fired unit needs a flue", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		flues := p.Plant.ByKind("flue")
		if len(flues) == 0 {
			if len(p.Plant.Units()) > 0 {
				p.Unknown(nil, "a flue block")
			}
			return
		}
		var on plant.PartSet
		for _, fl := range flues {
			for _, c := range fl.Children("connector") {
				for _, r := range c.Refs("from") {
					on.Add(r.Part)
				}
			}
		}
		for _, u := range p.Plant.Units() {
			if !on.Has(u) {
				missing(p, u, "the connector of "+u.Label(), check.Finding{Message: u.Label() + " is not connected to a flue."}, "connector")
			}
		}
	},
}

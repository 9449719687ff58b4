package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleGasTestPointMissing)

var ruleGasTestPointMissing = check.Rule{
	ID: "gas-test-point-missing", Group: check.Gas, Severity: lang.Warning, Since: "0.3",
	Summary: "The gas pressure cannot be read at a unit.",
	Why:     "The working pressure with all units firing is to be recorded at the last unit; without a test point nobody does.",
	Mend:    "take a gas valve with a test point behind it",
	Sources: sources(cite.Source{Work: "IGEM/UP/2", Clause: "test points at valves", Read: cite.Memory}),
	Limits:  "Not asked in the US.",
	Run: func(p *check.Pass) {
		if p.Plant.US() {
			return
		}
		var at plant.PartSet
		open := false
		for _, t := range p.Plant.Block("gas-run").Children("test-point") {
			open = open || t.Undecided() || t.Get("on").Open()
			for _, r := range t.Refs("on") {
				at.Add(r.Part)
			}
		}
		for _, u := range p.Plant.Units() {
			v := u.Child("gas-valve")
			if v == nil || v.First().Absent() {
				continue // unit-without-gas-valve speaks of it
			}
			if v.Undecided() || open && !v.Has("test-point") && !at.Has(u) {
				p.Unknown(u, "whether "+u.Label()+" has a test point")
				continue
			}
			if !v.Has("test-point") && !at.Has(u) {
				if nationOpen(p, u) {
					continue
				}
				p.Absent(v, "a test point at "+u.Label(), check.Finding{Part: u.Label(), Message: "The gas valve of " + u.Label() + " has no test point, and no other stands at the unit."})
			}
		}
	},
}

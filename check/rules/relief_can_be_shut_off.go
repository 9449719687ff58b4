package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleReliefCanBeShutOff)

var ruleReliefCanBeShutOff = check.Rule{
	ID: "relief-can-be-shut-off", Group: check.Pressure, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "A unit can be shut off from its safety valve.",
	Why:     "With both valves shut and the burner hot, nothing relieves the unit.",
	Mend:    "put the safety valve on the unit side of both isolating valves",
	Sources: sources(cite.Source{Work: "EN 12828", Edition: "2012+A1:2014", Read: cite.Published, Note: "extracts"}),
	Run: func(p *check.Pass) {
		for _, u := range p.Plant.Units() {
			r := u.Child("relief")
			if r == nil || r.First().Absent() || r.Undecided() {
				continue // relief-missing speaks of it
			}
			switch v := r.Get("place"); {
			case v.Is("system-side"):
				p.Report(u, check.Finding{Span: v.Span(), Found: "system-side", Limit: "unit-side", Message: "The safety valve of " + u.Label() + " stands outside its isolating valves.", Fixes: []lang.Fix{{Title: "Put it on the unit side", Best: true, Edits: []lang.Edit{{Span: v.Span(), NewText: "unit-side"}}}}})
			case !v.Known():
				if valves, _ := stands(u, "water-valve"); !valves {
					continue
				}
				p.Unknown(r, "on which side of its isolating valves the safety valve of "+u.Label()+" stands")
			}
		}
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleReliefUndrained)

var ruleReliefUndrained = check.Rule{
	ID: "relief-undrained", Group: check.Pressure, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "A safety valve has no discharge pipe.",
	Why:     "It blows hot water and steam at whoever stands there.",
	Mend:    "lead its discharge to a safe and visible place",
	Sources: sources(cite.Source{Work: "EN 12828", Edition: "2012+A1:2014", Read: cite.Published, Note: "extracts"}),
	Run: func(p *check.Pass) {
		for _, r := range p.Plant.ByKind("relief") {
			if r.First().Absent() || r.Undecided() {
				continue // relief-missing speaks of it
			}
			if _, ok := r.Ref("discharges-to"); ok {
				continue
			}
			label := r.Label()
			if r.Owner.Kind == "unit" {
				label = "the safety valve of " + r.Owner.Label()
			}
			piped := false
			for _, d := range p.Plant.ByKind("discharge") {
				for _, ref := range d.Refs("from") {
					piped = piped || ref.Part == r || ref.Part == r.Owner
				}
			}
			if !piped && r.Get("discharges-to").Open() {
				p.Unknown(r, "where "+label+" discharges to")
				continue
			}
			if !piped {
				missing(p, r, "the discharge of "+label, check.Finding{Part: r.Label(), Message: "Nothing says where " + label + " discharges to."}, "discharge")
			}
		}
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleLiftPlanMissing)

var ruleLiftPlanMissing = check.Rule{
	ID: "lift-plan-missing", Group: check.Frame, Severity: lang.Warning, Since: "0.2",
	Summary: "Heavy units are to be lifted and no lift plan is stated.",
	Why:     "A lift of this weight to this height goes wrong when nobody thought of gear, floor and people before.",
	Mend:    "have the lift planned by a competent person, and state it: lifting ... planned",
	Sources: sources(cite.Source{Work: "Lifting Operations and Lifting Equipment Regulations 1998", Read: cite.Published, Note: "the weight from which this rule asks is common practice"}),
	Run: func(p *check.Pass) {
		limit := p.Limit("lift-plan-from")
		for _, f := range p.Plant.ByKind("frame") {
			l := f.Child("lifting")
			if l == nil || l.First().Absent() || l.Has("planned") {
				continue // how units are lifted at all is asked for by lift-unfit
			}
			heaviest, lack := heaviestOn(f)
			switch {
			case lack != "":
				p.Unknown(f, lack)
			case heaviest == nil:
			case !l.First().Known():
				p.Unknown(l, "how units are lifted (lifting)")
			default:
				if m := heaviest.Child("mass").Get("mass").Num; m > limit.Num*(1+1e-9) {
					mass := lang.Quantity(m, lang.Mass, system(p))
					p.Report(l, check.Finding{Part: heaviest.Label(), Found: mass, Limit: "a lift plan over " + lang.Quantity(limit.Num, lang.Mass, system(p)), Source: limit.Source, Message: heaviest.Label() + " of " + mass + " is lifted, and no lift plan is stated."})
				}
			}
		}
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleSpareNotCapped)

var ruleSpareNotCapped = check.Rule{
	ID: "spare-not-capped", Group: check.Pressure, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "A spare connection is not capped.",
	Why:     "It leaks when the plant is filled.",
	Mend:    "cap each spare connection",
	Sources: sources(cite.Source{Work: "an open connection", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		for _, s := range p.Plant.ByKind("spare") {
			on, ok := s.Ref("on")
			want := s.Get("count")
			if !ok || !want.Known() {
				p.Unknown(s, "how many spare connections there are, and on what")
				continue
			}
			have, open := 0.0, false
			for _, c := range p.Plant.ByKind("cap") {
				if ref, ok := c.Ref("on"); ok && ref.Part == on.Part && !c.First().Absent() {
					switch n := c.Get("count"); {
					case !n.Given:
						have++
					case n.Open():
						open = true
					default:
						have += n.Num
					}
				}
			}
			if have >= want.Num {
				continue
			}
			if open {
				p.Unknown(s, "how many caps there are on "+on.Part.Label())
				continue
			}
			missing(p, s, "the caps on "+on.Part.Label(), check.Finding{Found: counted(have, "cap"), Limit: "at least " + counted(want.Num, "cap"), Message: on.Part.Label() + " has " + counted(want.Num, "spare connection") + " but " + counted(have, "cap") + "."}, "cap")
		}
	},
}

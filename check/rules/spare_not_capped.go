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
			have := 0.0
			for _, c := range p.Plant.ByKind("cap") {
				if ref, ok := c.Ref("on"); ok && ref.Part == on.Part {
					n := c.Get("count")
					if !n.Given {
						have++
					} else if n.Known() {
						have += n.Num
					}
				}
			}
			if have >= want.Num {
				continue
			}
			p.Absent(s, "the caps", check.Finding{Found: counted(have, "cap"), Limit: "at least " + counted(want.Num, "cap"), Message: on.Part.Label() + " has " + counted(want.Num, "spare connection") + " but " + counted(have, "cap") + "."})
		}
	},
}

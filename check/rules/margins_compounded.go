package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleMarginsCompounded)

var ruleMarginsCompounded = check.Rule{
	ID: "margins-compounded", Group: check.Capacity, Severity: lang.Warning, Since: "0.1",
	Summary: "A margin on the emitters and one on the units are both taken.",
	Why:     "Ten and twenty per cent make thirty-two: the plant is oversized twice.",
	Mend:    "keep one of the margins",
	Sources: sources(cite.Source{Work: "Public heating course notes citing CIBSE Guide F", Clause: "boiler sizing, Guide F 10.1", Read: cite.Published}),
	Run: func(p *check.Pass) {
		m := p.Plant.Block("basis").Child("margin")
		e, u := m.Get("emitters"), m.Get("units")
		may := func(v plant.Value) bool { return v.Open() || v.Num > 0 }
		switch {
		case !may(e) || !may(u):
			return
		case e.Open():
			p.Unknown(m, "the margin on the emitters")
			return
		case u.Open():
			p.Unknown(m, "the margin on the units")
			return
		}
		both := (1+e.Num)*(1+u.Num) - 1
		p.Report(m, check.Finding{Found: p.In(both, "%") + " together", Limit: "one margin", Message: "A margin of " + p.In(e.Num, "%") + " on the emitters and of " + p.In(u.Num, "%") + " on the units make " + p.In(both, "%") + " together."})
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleDamperCheckMissing)

var ruleDamperCheckMissing = check.Rule{
	ID: "damper-check-missing", Group: check.Flue, Severity: lang.Warning, Since: "0.1",
	Summary: "The yearly work does not name the dampers of a shared flue.",
	Why:     "A damper that sticks open is seen only when somebody looks.",
	Mend:    "add dampers to the yearly checks of the handover",
	Sources: sources(cite.Source{Work: "yearly check of non-return dampers", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		shared := false
		for _, fl := range p.Plant.ByKind("flue") {
			shared = shared || len(fl.Children("connector")) > 1
		}
		if !shared {
			return
		}
		h := p.Plant.Block("handover")
		if h == nil {
			p.Unknown(nil, "a handover block with the yearly checks")
			return
		}
		open := false
		for _, y := range h.Children("yearly") {
			for v := range y.List("checks") {
				if v.Is("dampers") {
					return
				}
				open = open || v.Open()
			}
		}
		if open {
			p.Unknown(h, "the yearly checks")
			return
		}
		p.Absent(h, "the yearly checks", check.Finding{Message: "The yearly checks do not name the dampers of the shared flue."})
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleRegulatorVentsIndoors)

var ruleRegulatorVentsIndoors = check.Rule{
	ID: "regulator-vents-indoors", Group: check.Gas, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "The vent of a regulator ends indoors.",
	Why:     "When its diaphragm fails gas fills the room.",
	Mend:    "lead the vent outdoors to a safe place",
	Sources: sources(cite.Source{Work: "Gas Safety (Installation and Use) Regulations 1998", Clause: "regulation 14", Read: cite.Published}),
	Run: func(p *check.Pass) {
		for _, r := range p.Plant.ByKind("regulator") {
			v := r.Get("vents-to")
			if !v.Known() && !v.Absent() {
				p.Unknown(r, "where the vent of "+r.Label()+" ends")
			}
			if v.Is("inside") {
				p.Report(r, check.Finding{Span: v.Span(), Message: "The vent of " + r.Label() + " ends indoors.", Fixes: []lang.Fix{{Title: "Lead it outside", Best: true, Edits: []lang.Edit{{Span: r.Stmt.Abs(v.Field.Values[0].Expr.Span), NewText: "outside"}}}}})
			}
		}
	},
}

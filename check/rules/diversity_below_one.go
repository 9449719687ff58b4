package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleDiversityBelowOne)

var ruleDiversityBelowOne = check.Rule{
	ID: "diversity-below-one", Group: check.Gas, Severity: lang.Error, Since: "0.1",
	Summary: "The gas run is sized for fewer units than may fire.",
	Why:     "On a cold start all units fire at once.",
	Mend:    "take all units as firing",
	Sources: sources(cite.Source{Work: "International Fuel Gas Code", Edition: "2018", Clause: "appendix A.7.1", Read: cite.Published, Note: "appliances operated at once; for a cascade common practice"}),
	Run: func(p *check.Pass) {
		d := p.Plant.Block("gas-run").Child("diversity")
		v := d.First()
		firing := p.Plant.Block("basis").Get("firing")
		if !v.Known() || v.Num >= 1-1e-9 || firing.Is("locked-in-turn") {
			return
		}
		if firing.Open() {
			p.Unknown(d, "whether all units may fire at once (firing)")
			return
		}
		p.Report(d, check.Finding{Span: v.Span(), Found: p.In(v.Num, "ratio"), Limit: "1 ratio", Message: "The gas run counts " + p.In(v.Num, "%") + " of the units, but all may fire at once.", Fixes: []lang.Fix{{Title: "Count all units", Best: true, Edits: []lang.Edit{{Span: d.Stmt.Abs(v.Field.Values[0].Expr.Span), NewText: "1 ratio"}}}}})
	},
}

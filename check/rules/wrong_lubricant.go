package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleWrongLubricant)

var ruleWrongLubricant = check.Rule{
	ID: "wrong-lubricant", Group: check.Flue, Severity: lang.Warning, Since: "0.1",
	Summary: "The seals of a flue are put together with oil or grease.",
	Why:     "Oil and grease swell the seals; after a winter the joint leaks products.",
	Mend:    "use a water-based or silicone-free lubricant",
	Sources: sources(cite.Source{Work: "practice of seal suppliers for push-fit flues", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		for _, fl := range p.Plant.ByKind("flue") {
			s := fl.Child("lubricant")
			v := s.First()
			switch v.Word {
			case "grease", "oil", "silicone":
			default:
				continue
			}
			p.Report(fl, check.Finding{
				Span: v.Span(), Found: v.Word, Limit: "water-based or silicone-free", Message: "The seals of " + fl.Label() + " are put together with " + v.Word + ".",
				Fixes: []lang.Fix{{Title: "Use a water-based lubricant", Best: true, Edits: []lang.Edit{{Span: s.Stmt.Abs(v.Field.Values[0].Expr.Span), NewText: "water-based"}}}},
			})
		}
	},
}

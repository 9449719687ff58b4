package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleFlueSupportsFar)

var ruleFlueSupportsFar = check.Rule{
	ID: "flue-supports-far", Group: check.Flue, Severity: lang.Warning, Since: "0.1",
	Summary: "The supports of a flue stand too far apart, or not at its bends.",
	Why:     "A flue that sags holds condensate and pulls its joints open.",
	Mend:    "support the flue about every meter and at each bend",
	Sources: sources(cite.Source{Work: "installation practice of plastic flues", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		limit := p.Limit("flue-support-spacing")
		for _, fl := range p.Plant.ByKind("flue") {
			s := fl.Child("support")
			if s == nil || s.Undecided() {
				p.Unknown(fl, "the supports of "+fl.Label())
				continue
			}
			v := s.Get("spacing")
			if v.Known() && v.Num > limit.Num*(1+1e-9) {
				p.Report(fl, check.Finding{
					Span: v.Span(), Found: p.In(v.Num, "m"), Limit: "at most " + limit.Text(), Source: limit.Source, Message: "The supports of " + fl.Label() + " stand " + p.In(v.Num, "m") + " apart; about " + limit.Text() + " is usual.",
					Fixes: []lang.Fix{{Title: "Support every " + limit.Text(), Best: true, Edits: []lang.Edit{{Span: s.Stmt.Abs(v.Field.Values[0].Expr.Span), NewText: "1.0 m"}}}},
				})
			}
			if !s.Has("at-bends") {
				end := s.Stmt.HeadSpan().End
				p.Report(fl, check.Finding{
					Span: s.Span(), Source: limit.Source, Message: "The bends of " + fl.Label() + " have no supports of their own.",
					Fixes: []lang.Fix{{Title: "Support each bend", Best: true, Edits: []lang.Edit{{Span: lang.Span{Start: end, End: end}, NewText: " at-bends"}}}},
				})
			}
		}
	},
}

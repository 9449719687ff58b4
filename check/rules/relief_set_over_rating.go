package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(check.Rule{
	ID: "relief-set-over-rating", Group: check.Pressure, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "A safety valve opens above what its unit stands.",
	Why:     "The unit bursts before the valve opens.",
	Mend:    "set the valve at or below the rating of the weakest part",
	Sources: sources(cite.Source{Work: "EN 12828", Edition: "2012+A1:2014", Read: cite.Published, Note: "the set pressure is not above the lowest rated part"}),
	Run: func(p *check.Pass) {
		for _, u := range p.Plant.Units() {
			r := u.Child("relief")
			set := r.Get("set-pressure")
			rating := u.Child("water-pressure").Get("pressure")
			if r == nil || !set.Given {
				continue
			}
			if !set.Known() || !rating.Known() {
				p.Unknown(u, "the set pressure of the safety valve and the water pressure that "+u.Label()+" stands")
				continue
			}
			if set.Num <= rating.Num2*(1+1e-9) {
				continue
			}
			text := lang.In(rating.Num2, "bar")
			p.Report(u, check.Finding{
				Span: set.Span(), Found: lang.In(set.Num, "bar"), Limit: "at most " + text, Message: "The safety valve of " + u.Label() + " opens at " + lang.In(set.Num, "bar") + "; the unit is rated for " + text + ".",
				Fixes: []lang.Fix{{Title: "Set it to " + text, Edits: []lang.Edit{{Span: r.Stmt.Abs(set.Field.Values[0].Expr.Span), NewText: text}}}},
			})
		}
	},
})

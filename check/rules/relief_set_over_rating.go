package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleReliefSetOverRating)

var ruleReliefSetOverRating = check.Rule{
	ID: "relief-set-over-rating", Group: check.Pressure, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "A safety valve opens above what its unit is rated for, or all valves of a circuit above its weakest part.",
	Why:     "The weakest part bursts before a valve opens.",
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
				p.Unknown(u, "the set pressure of the safety valve and the water pressure that "+u.Label()+" is rated for")
				continue
			}
			if set.Num <= rating.Num2*(1+1e-9) {
				continue
			}
			text := p.Down(rating.Num2, "bar")
			p.Report(u, check.Finding{
				Span: set.Span(), Found: p.In(set.Num, "bar"), Limit: "at most " + text, Message: "The safety valve of " + u.Label() + " opens at " + p.In(set.Num, "bar") + "; the unit is rated for " + text + ".",
				Fixes: []lang.Fix{{Title: "Set it to " + text, Edits: []lang.Edit{{Span: r.Stmt.Abs(set.Field.Values[0].Expr.Span), NewText: text}}}},
			})
		}
		s := p.Plant.Block("safety")
		for _, c := range [...]solve.Circuit{solve.Primary, solve.Secondary} {
			judge := func(part *plant.Part, slot, words string) {
				rating := part.Get(slot)
				side := part.Get("side")
				if !rating.Given || side.Word != string(c) && (side.Given || c != solve.Primary) {
					return
				}
				set := solve.LowestRelief(p.Plant, c)
				switch {
				case !rating.Known():
					p.Unknown(part, "the rating of "+words)
				case set == 0:
					p.Unknown(part, "the set pressure of a safety valve of the "+string(c)+" circuit")
				case set > rating.Num*(1+1e-9):
					p.Report(part, check.Finding{
						Span: rating.Span(), Found: p.In(set, "bar"), Limit: "at most " + p.In(rating.Num, "bar"),
						Message: "No safety valve of the " + string(c) + " circuit opens below " + p.In(set, "bar") + "; " + words + " is rated for " + p.In(rating.Num, "bar") + ".",
					})
				}
			}
			for _, w := range s.Children("weakest") {
				judge(w, "pressure", "its weakest part")
			}
			for _, v := range s.Children("vessel") {
				judge(v, "rating", v.Label())
			}
		}
	},
}

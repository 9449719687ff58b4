package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(check.Rule{
	ID: "cut-outs-out-of-order", Group: check.Pressure, Severity: lang.Error, Since: "0.1",
	Summary: "The pressure cut-outs stand in the wrong order.",
	Why:     "The safety valve lifts before the burners stop, or the burners never start.",
	Mend:    "set low cut-out < fill < high cut-out, at least 0.2 bar under the safety valve",
	Sources: sources(cite.Source{Work: "order of pressures: fill, high cut-out, safety valve less 0.2 bar", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		s := p.Plant.Block("safety")
		pr := s.Child("pressurisation")
		if pr == nil {
			return
		}
		low, high := pr.Get("low"), pr.Get("high")
		gap := p.Limit("cut-out-gap")
		if low.Known() && high.Known() && low.Num >= high.Num {
			p.Report(pr, check.Finding{Span: low.Span(), Found: lang.In(low.Num, "bar"), Limit: "below " + lang.In(high.Num, "bar"), Message: "The low cut-out at " + lang.In(low.Num, "bar") + " is not below the high cut-out at " + lang.In(high.Num, "bar") + "."})
		}
		set := 0.0
		for _, u := range p.Plant.Units() {
			if v := u.Child("relief").Get("set-pressure"); v.Known() && (set == 0 || v.Num < set) {
				set = v.Num
			}
		}
		if set == 0 || !high.Known() {
			p.Unknown(pr, "the high cut-out and the set pressure of the safety valves")
			return
		}
		if high.Num > (set-gap.Num)*(1+1e-9) {
			text := lang.In(set-gap.Num, "bar")
			p.Report(pr, check.Finding{
				Span: high.Span(), Found: lang.In(high.Num, "bar"), Limit: "at most " + text, Source: gap.Source, Message: "The high cut-out at " + lang.In(high.Num, "bar") + " is less than " + gap.Text() + " under the safety valves at " + lang.In(set, "bar") + ".",
				Fixes: []lang.Fix{{Title: "Set it to " + text, Best: true, Edits: []lang.Edit{{Span: pr.Stmt.Abs(high.Field.Values[0].Expr.Span), NewText: text}}}},
			})
		}
	},
})

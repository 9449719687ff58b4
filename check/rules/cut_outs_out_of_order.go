package rules

import (
	"math"

	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleCutOutsOutOfOrder)

var ruleCutOutsOutOfOrder = check.Rule{
	ID: "cut-outs-out-of-order", Group: check.Pressure, Severity: lang.Error, Since: "0.1",
	Summary: "The pressure cut-outs stand in the wrong order.",
	Why:     "The safety valve lifts before the burners stop, or the burners never start.",
	Mend:    "set low cut-out < fill < high cut-out, with the gap kept under the safety valve",
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
			p.Report(pr, check.Finding{Span: low.Span(), Found: p.In(low.Num, "bar"), Limit: "below " + p.In(high.Num, "bar"), Message: "The low cut-out at " + p.In(low.Num, "bar") + " is not below the high cut-out at " + p.In(high.Num, "bar") + "."})
		}
		for _, f := range pr.Owner.Children("fill") {
			v := f.Get("pressure")
			if !v.Known() || f.Get("side").Is("secondary") {
				continue
			}
			switch in := p.In(v.Num, "bar"); {
			case low.Known() && v.Num <= low.Num:
				p.Report(f, check.Finding{Span: v.Span(), Found: in, Limit: "above " + p.In(low.Num, "bar"), Message: "The circuit is filled to " + in + ", not above the low cut-out at " + p.In(low.Num, "bar") + ": the units do not start."})
			case high.Known() && v.Num >= high.Num:
				p.Report(f, check.Finding{Span: v.Span(), Found: in, Limit: "below " + p.In(high.Num, "bar"), Message: "The circuit is filled to " + in + ", not below the high cut-out at " + p.In(high.Num, "bar") + ": the units do not start."})
			}
		}
		set, open := math.Inf(1), !high.Known()
		for _, u := range p.Plant.Units() {
			v := u.Child("relief").Get("set-pressure")
			if v.Known() {
				set = min(set, v.Num)
			}
			open = open || v.Open() // it may be the one that opens first
		}
		switch over := high.Known() && high.Num > (set-gap.Num)*(1+1e-9); {
		case !over && (open || math.IsInf(set, 1)):
			p.Unknown(pr, "the high cut-out and the set pressure of the safety valves")
		case over:
			text := p.Down(set-gap.Num, "bar")
			p.Report(pr, check.Finding{
				Span: high.Span(), Found: p.In(high.Num, "bar"), Limit: "at most " + text, Source: gap.Source, Message: "The high cut-out at " + p.In(high.Num, "bar") + " is less than " + gap.Text() + " under the safety valves at " + p.In(set, "bar") + ".",
				Fixes: []lang.Fix{{Title: "Set it to " + text, Best: true, Edits: []lang.Edit{{Span: pr.Stmt.Abs(high.Field.Values[0].Expr.Span), NewText: text}}}},
			})
		}
	},
}

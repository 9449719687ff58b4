package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/pressuretest"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleStrengthTestTooWeak)

var ruleStrengthTestTooWeak = check.Rule{
	ID: "strength-test-too-weak", Group: check.Testing, Severity: lang.Warning, Since: "0.2",
	Summary: "The strength test of the water pipes is too weak or too short.",
	Why:     "A joint that holds the test may still give way in service.",
	Mend:    "test with 1.5 times the greatest working pressure for an hour at least, with what is rated for less shut off",
	Limits:  "The greatest working pressure is the lowest high-pressure cut-out, or the lowest safety valve where no cut-out is stated.",
	Sources: sources(pressuretest.SourceWater, pressuretest.SourceHold),
	Run: func(p *check.Pass) {
		for _, s := range p.Plant.Block("tests").Children("strength") {
			q := p.Results.Get(s, "needed-pressure", solve.Always)
			v := s.Get("pressure")
			switch {
			case q == nil:
				continue // not of the water
			case v.Open():
				p.Unknown(s, "the pressure of the strength test")
			case !v.Known(): // value-missing speaks of it
			case !q.Known():
				p.Unknown(s, q.Missing)
			case v.Num < q.Num*(1-1e-6):
				unit := written(v, "bar")
				p.Report(s, check.Finding{Span: v.Span(), Found: lang.In(v.Num, unit), Limit: "at least " + lang.In(q.Num, unit), Quantity: q, Source: q.Formula.Source, Message: "The strength test is asked for with " + lang.In(v.Num, unit) + "; it needs " + lang.In(q.Num, unit) + "."})
			}
			limit := p.Limit("strength-test-hold")
			if t := s.Get("time"); t.Known() && t.Num < limit.Num*(1-1e-9) {
				p.Report(s, check.Finding{Span: t.Span(), Found: lang.In(t.Num, "min"), Limit: "at least " + lang.In(limit.Num, "min"), Source: limit.Source, Message: "The strength test is held for " + lang.In(t.Num, "min") + " only."})
			}
		}
	},
}

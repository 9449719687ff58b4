package rules

import (
	"math"

	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleStatedGasRateContradicts)

var ruleStatedGasRateContradicts = check.Rule{
	ID: "stated-gas-rate-contradicts", Group: check.Gas, Severity: lang.Error, Since: "0.1",
	Summary: "A stated gas rate does not match the heat inputs behind the pipe.",
	Why:     "The pipe is sized for another plant.",
	Mend:    "replace it by the computed rate",
	Sources: sources(cite.Source{Work: "energy balance", Read: cite.Published, Note: "EN 437 calorific values"}),
	Run: func(p *check.Pass) {
		tolerance := p.Limit("gas-rate-tolerance")
		for _, s := range p.Plant.Block("gas-run").Children("section") {
			ref, ok := s.Ref("of")
			v := s.Get("rate")
			if !ok || !v.Known() {
				continue
			}
			q := p.Results.Get(ref.Part, "rate", solve.AllFull)
			if !q.Known() {
				p.Unknown(s, "the gas rate of "+ref.Part.Label())
				continue
			}
			if math.Abs(v.Num-q.Num) <= tolerance.Num*q.Num*(1+1e-9) {
				continue
			}
			text := p.In(q.Num, q.Unit)
			p.Report(s, check.Finding{
				Span: v.Span(), Found: p.In(v.Num, q.Unit), Limit: text + " within " + tolerance.Text(), Quantity: q, Message: ref.Part.Label() + " is said to carry " + p.In(v.Num, q.Unit) + ", but the units behind it burn " + text + ".",
				Fixes: []lang.Fix{{Title: "Write " + text, Best: true, Edits: []lang.Edit{{Span: s.Stmt.Abs(v.Field.Values[0].Expr.Span), NewText: text}}}},
			})
		}
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/gas"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleGasTestTooShort)

var ruleGasTestTooShort = check.Rule{
	ID: "gas-test-too-short", Group: check.Testing, Severity: lang.Error, Since: "0.1",
	Summary: "The tightness test is shorter than the installation volume needs.",
	Why:     "A small leak does not show on the gauge.",
	Mend:    "test for the needed time",
	Sources: sources(gas.SourceTightness, gas.SourceUSTest),
	Run: func(p *check.Pass) {
		block := p.Plant.Block("gas-run")
		for _, t := range p.Plant.Block("tests").Children("tightness") {
			v := t.Get("time")
			q := p.Results.Get(block, "test-time", solve.Always)
			if q == nil {
				continue
			}
			if p.Plant.Block("basis").Get("jurisdiction").Open() {
				p.Unknown(t, "the jurisdiction, which sets how the time is reckoned")
				continue
			}
			if !q.Known() || !v.Known() {
				p.Unknown(t, "the installation volume and the time of the test")
				continue
			}
			if v.Num >= q.Num*(1-1e-9) {
				continue
			}
			text := p.Up(q.Num, "min")
			p.Report(t, check.Finding{
				Span: v.Span(), Found: p.In(v.Num, "min"), Limit: "at least " + text, Source: q.Formula.Source, Quantity: q, Message: "The tightness test lasts " + p.In(v.Num, "min") + "; this volume and gauge need " + text + ".",
				Fixes: []lang.Fix{{Title: "Test for " + text, Best: true, Edits: []lang.Edit{{Span: t.Stmt.Abs(v.Field.Values[0].Expr.Span), NewText: text}}}},
			})
		}
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/pressuretest"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleGasTestTooWeak)

var ruleGasTestTooWeak = check.Rule{
	ID: "gas-test-too-weak", Group: check.Testing, Severity: lang.Error, Since: "0.2",
	Summary: "The test of the gas pipes is asked for with less pressure than the code wants.",
	Why:     "A joint that holds a weak test may leak in service.",
	Mend:    "test with the pressure that the code asks for, appliances shut off",
	Limits:  "Judged where the US code holds; elsewhere the standard of the tightness test sets the pressure by the pressure of the supply.",
	Sources: sources(pressuretest.SourceUSGas),
	Run: func(p *check.Pass) {
		q := p.Results.Get(p.Plant.Block("gas-run"), "test-pressure", solve.Always)
		if q == nil && !p.Plant.Block("basis").Get("jurisdiction").Open() {
			return
		}
		for _, t := range p.Plant.Block("tests").Children("tightness") {
			v := t.Get("pressure")
			switch {
			case nationOpen(p, t):
			case !q.Known():
				p.Unknown(t, q.Missing)
			case v.Open():
				p.Unknown(t, "the pressure of the test")
			case v.Known() && v.Num < q.Num*(1-1e-6):
				unit := written(v, "psi")
				p.Report(t, check.Finding{Span: v.Span(), Found: lang.In(v.Num, unit), Limit: "at least " + lang.In(q.Num, unit), Quantity: q, Source: q.Formula.Source, Message: "The test of the gas pipes is asked for with " + lang.In(v.Num, unit) + "; the code wants " + lang.In(q.Num, unit) + "."})
			}
		}
	},
}

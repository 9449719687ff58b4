package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/vessel"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&rulePrechargeTooLow)

var rulePrechargeTooLow = check.Rule{
	ID: "precharge-too-low", Group: check.Pressure, Severity: lang.Warning, Since: "0.2",
	Summary: "The precharge of a vessel is not 0.3 bar over the static pressure.",
	Why:     "The weight of the water fills the vessel cold, and it has no room left when the circuit heats up.",
	Mend:    "raise the precharge",
	Sources: sources(vessel.SourcePrecharge),
	Run: func(p *check.Pass) {
		for _, v := range p.Plant.ByKind("vessel") {
			least := p.Results.Get(v, "least-precharge", solve.Always)
			if least == nil {
				p.Unknown(v, "which circuit "+v.Label()+" serves (primary or secondary)")
				continue
			}
			pre := v.Get("precharge")
			if !least.Known() || !pre.Known() {
				needs := least.Missing
				if needs == "" {
					needs = "the precharge of " + v.Label()
				}
				p.Unknown(v, needs)
				continue
			}
			if pre.Num >= least.Num*(1-1e-9) {
				continue
			}
			text := p.Up(least.Num, least.Unit)
			p.Report(v, check.Finding{
				Span: pre.Span(), Found: p.In(pre.Num, least.Unit), Limit: "at least " + text, Quantity: least,
				Message: "The precharge of " + v.Label() + " is " + p.In(pre.Num, least.Unit) + "; the water above it asks for " + text + ".",
				Fixes:   []lang.Fix{{Title: "Set it to " + text, Best: true, Edits: []lang.Edit{{Span: v.Stmt.Abs(pre.Field.Values[0].Expr.Span), NewText: text}}}},
			})
		}
	},
}

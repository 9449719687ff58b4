package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/condensate"
	"example.org/tundish/lang"
)

var _ = register(&ruleDrainFallsTooLittle)

var ruleDrainFallsTooLittle = check.Rule{
	ID: "drain-falls-too-little", Group: check.Condensate, Severity: lang.Warning, Since: "0.1",
	Summary: "A condensate pipe falls less than is usual.",
	Why:     "Slow condensate leaves sludge that blocks the pipe.",
	Mend:    "lay the pipe steeper",
	Sources: sources(condensate.SourceFall),
	Run: func(p *check.Pass) {
		limit := p.Limit("drain-fall-least")
		for _, pipe := range p.Plant.ByKind("condensate-pipe") {
			v := pipe.Get("falls")
			if !v.Known() {
				p.Unknown(pipe, "the fall of "+pipe.Label())
				continue
			}
			if v.Num >= limit.Num*(1-1e-9)-0.0014 { // 2.5 degrees are 43.7 mm/m, which the trade rounds up to 45
				continue
			}
			p.Report(pipe, check.Finding{
				Span: v.Span(), Found: p.In(v.Num, "mm/m"), Limit: "at least " + limit.Text(), Source: limit.Source, Message: pipe.Label() + " falls " + p.In(v.Num, "mm/m") + "; usual is " + limit.Text() + ".",
				Fixes: []lang.Fix{{Title: "Let it fall " + limit.Text(), Best: true, Edits: []lang.Edit{{Span: pipe.Stmt.Abs(v.Field.Values[0].Expr.Span), NewText: limit.Text()}}}},
			})
		}
	},
}

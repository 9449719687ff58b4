package rules

import (
	"math"

	"example.org/tundish/check"
	"example.org/tundish/check/calc/flue"
	"example.org/tundish/lang"
)

var _ = register(&ruleFlueFallsTooLittle)

var ruleFlueFallsTooLittle = check.Rule{
	ID: "flue-falls-too-little", Group: check.Flue, Severity: lang.Warning, Since: "0.1",
	Summary: "A horizontal piece of a condensing flue falls less than 3 degrees.",
	Why:     "Condensate stands in a flat flue, narrows it, pulls at its joints and freezes near the terminal.",
	Mend:    "give the piece a fall of 3 degrees (52 mm/m) towards its trap or unit",
	Limits:  "A piece that falls the wrong way, or not at all, is the matter of flue-falls-away.",
	Sources: sources(flue.SourceFall),
	Run: func(p *check.Pass) {
		whole := *p.Limit("flue-fall-least")
		whole.Num = math.Floor(whole.Num*1000+1e-9) / 1000 // falls are compared in whole mm by m
		for _, kind := range [...]string{"connector", "flue-header", "run"} {
			for _, part := range p.Plant.ByKind(kind) {
				q := p.Results.Get(part, "fall", 0)
				if q.Known() && q.Num <= 0 {
					continue
				}
				f := p.AtLeast(q, &whole)
				if f == nil {
					continue
				}
				f.Limit = "at least 52 mm/m (3 degrees)"
				f.Message = part.Label() + " falls " + p.In(q.Num, "mm/m") + "; a condensing flue wants 52 mm/m, which is 3 degrees."
				f.Fixes = []lang.Fix{{Title: "Let " + part.Label() + " fall 3 degrees", Best: true, Edits: []lang.Edit{{Span: part.Stmt.Abs(part.Get("falls").Field.Values[0].Expr.Span), NewText: "3 deg"}}}}
				p.Report(part, *f)
			}
		}
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/combustion"
	"example.org/tundish/lang"
)

var _ = register(&ruleNeutraliserTooSmall)

var ruleNeutraliserTooSmall = check.Rule{
	ID: "neutraliser-too-small", Group: check.Condensate, Severity: lang.Warning, Since: "0.1",
	Summary: "The neutralizer treats less than the units can make.",
	Why:     "What runs past it reaches the drain acid.",
	Mend:    "take a neutralizer of the needed capacity",
	Sources: sources(combustion.SourceCondensate),
	Run: func(p *check.Pass) {
		for _, n := range p.Plant.ByKind("neutraliser") {
			v := n.Get("capacity")
			q := p.Results.Get(n, "needed-capacity", 0)
			if !v.Known() {
				p.Unknown(n, "the capacity of "+n.Label())
				continue
			}
			f := p.AtMost(q, p.StatedLimit(v, "l/h", "stated capacity of "+n.Label()))
			if f == nil {
				continue
			}
			f.Found, f.Limit, f.Source = p.In(v.Num, "l/h"), "at least "+p.In(q.Num, "l/h"), combustion.SourceCondensate
			f.Message = n.Label() + " treats " + f.Found + ", but the units can make " + p.In(q.Num, "l/h") + "."
			text := p.Up(q.Num, "l/h")
			f.Fixes = []lang.Fix{{Title: "Take " + text, Best: true, Edits: []lang.Edit{{Span: n.Stmt.Abs(v.Field.Values[0].Expr.Span), NewText: text}}}}
			p.Report(n, *f)
		}
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/pipe"
	"example.org/tundish/lang"
)

var _ = register(&ruleGasSupportsFar)

var ruleGasSupportsFar = check.Rule{
	ID: "gas-supports-far", Group: check.Gas, Severity: lang.Warning, Since: "0.1",
	Summary: "The supports of a gas pipe stand too far apart.",
	Why:     "The pipe sags, and its joints carry the weight.",
	Mend:    "support the pipe at the printed distance",
	Sources: sources(pipe.SourceSupports),
	Run: func(p *check.Pass) {
		for _, kind := range [...]string{"pipe", "manifold", "drop"} {
			for _, part := range p.Plant.Block("gas-run").Children(kind) {
				v, material, size := part.Get("support"), part.Get("material"), part.Get("size")
				if !v.Known() {
					if v.Open() {
						p.Unknown(part, "the distance from support to support of "+part.Label())
					}
					continue
				}
				if !material.Known() || !size.Known() {
					p.Unknown(part, "the material and size of "+part.Label())
					continue
				}
				most, ok := pipe.GasSupport(material.Word, size.Num)
				if !ok {
					p.Unknown(part, "a size of "+part.Label()+" in the table of supports")
					continue
				}
				if v.Num <= most*(1+1e-9) {
					continue
				}
				text := p.Down(most, "m")
				p.Report(part, check.Finding{
					Span: v.Span(), Found: p.In(v.Num, "m"), Limit: "at most " + text, Source: pipe.SourceSupports, Message: "The supports of " + part.Label() + " stand " + p.In(v.Num, "m") + " apart; the most is " + text + ".",
					Fixes: []lang.Fix{{Title: "Support every " + text, Best: true, Edits: []lang.Edit{{Span: part.Stmt.Abs(v.Field.Values[0].Expr.Span), NewText: text}}}},
				})
			}
		}
	},
}

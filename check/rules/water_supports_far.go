package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/pipe"
	"example.org/tundish/lang"
)

var _ = register(&ruleWaterSupportsFar)

var ruleWaterSupportsFar = check.Rule{
	ID: "water-supports-far", Group: check.Water, Severity: lang.Warning, Since: "0.3",
	Summary: "The supports of a heating pipe stand too far apart.",
	Why:     "Full of water the pipe sags, keeps air in its high spots and pulls at its joints.",
	Mend:    "support the pipe at the printed distance",
	Limits:  "Horizontal pipes of steel and copper.",
	Sources: sources(pipe.SourceWaterSupports),
	Run: func(p *check.Pass) {
		for _, block := range [...]string{"headers", "secondary"} {
			for _, kind := range [...]string{"header", "branch", "pipe"} {
				for _, part := range p.Plant.Block(block).Children(kind) {
					v := part.Get("support")
					if !v.Known() {
						if v.Open() {
							p.Unknown(part, "the distance from support to support of "+part.Label())
						}
						continue
					}
					material, size := part.Get("material"), part.Get("size")
					most, ok := pipe.WaterSupport(material.Word, size.Num)
					if !ok {
						p.Unknown(part, "a material and size of "+part.Label()+" in the table of supports")
						continue
					}
					if v.Num <= most*(1+1e-9) {
						continue
					}
					text := p.Down(most, "m")
					p.Report(part, check.Finding{
						Span: v.Span(), Found: p.In(v.Num, "m"), Limit: "at most " + text, Source: pipe.SourceWaterSupports, Message: "The supports of " + part.Label() + " stand " + p.In(v.Num, "m") + " apart; the most is " + text + ".",
						Fixes: []lang.Fix{{Title: "Support every " + text, Best: true, Edits: []lang.Edit{{Span: part.Stmt.Abs(v.Field.Values[0].Expr.Span), NewText: text}}}},
					})
				}
			}
		}
	},
}

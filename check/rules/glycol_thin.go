package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleGlycolThin)

var ruleGlycolThin = check.Rule{
	ID: "glycol-thin", Group: check.Treatment, Severity: lang.Warning, Since: "0.3",
	Summary: "There is less glycol in the water than keeps bacteria out.",
	Why:     "Thin glycol is food: slime grows in the circuit and the water turns acid.",
	Mend:    "mix in more, or take another protection from frost",
	Sources: sources(cite.Source{Work: "share of glycol that keeps bacteria out", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		glycol := p.Plant.Block("separation").Child("glycol")
		v, limit := glycol.Get("share"), p.Limit("glycol-share-least")
		switch {
		case glycol == nil || glycol.First().Absent():
		case !v.Known():
			p.Unknown(glycol, "the share of glycol")
		case v.Num > 0 && v.Num < limit.Num*(1-1e-9):
			p.Report(glycol, check.Finding{Span: v.Span(), Found: lang.In(v.Num, "%"), Limit: "at least " + limit.Text(), Source: limit.Source, Message: "The water holds " + lang.In(v.Num, "%") + " of glycol; below " + limit.Text() + " bacteria grow in it."})
		}
	},
}

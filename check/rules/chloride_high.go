package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/treatment"
	"example.org/tundish/lang"
)

var _ = register(&ruleChlorideHigh)

var ruleChlorideHigh = check.Rule{
	ID: "chloride-high", Group: check.Treatment, Severity: lang.Warning, Since: "0.2",
	Summary: "The fill water holds more chloride than stainless exchangers bear.",
	Why:     "Chloride pits stainless steel, first where it is hottest.",
	Mend:    "fill with demineralized water",
	Sources: sources(treatment.SourceChloride),
	Run: func(p *check.Pass) {
		fill := p.Plant.Block("water-quality").Child("fill-water")
		v := fill.Get("chloride")
		if fill == nil || !v.Known() {
			return
		}
		most := p.Limit("chloride-most")
		for _, u := range p.Plant.Units() {
			if !u.Get("exchanger").Is("stainless") || v.Num <= most.Num*(1+1e-9) {
				continue
			}
			p.Report(fill, check.Finding{
				Span: v.Span(), Found: p.In(v.Num, "mg/l"), Limit: "at most " + most.Text(), Source: most.Source,
				Message: "The fill water holds " + p.In(v.Num, "mg/l") + " of chloride; for stainless exchangers the most is " + most.Text() + ".",
			})
			return
		}
	},
}

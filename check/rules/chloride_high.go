package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/treatment"
	"example.org/tundish/check/plant"
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
		if v.Open() {
			p.Unknown(fill, "the chloride of the fill water")
		}
		most := p.Limit("chloride-most")
		if !v.Known() || v.Num <= most.Num*(1+1e-9) {
			return
		}
		var open *plant.Part // the first unit whose metal may be stainless
		for _, u := range p.Plant.Units() {
			metal := u.Get("exchanger")
			if open == nil && !metal.Known() {
				open = u
			}
			if !metal.Is("stainless") {
				continue
			}
			p.Report(fill, check.Finding{
				Span: v.Span(), Found: p.In(v.Num, "mg/l"), Limit: "at most " + most.Text(), Source: most.Source,
				Message: "The fill water holds " + p.In(v.Num, "mg/l") + " of chloride; for stainless exchangers the most is " + most.Text() + ".",
			})
			return
		}
		if open != nil {
			p.Unknown(open, "the metal of the heat exchanger of "+open.Label())
		}
	},
}

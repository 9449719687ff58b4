package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleAcidityUnfit)

var ruleAcidityUnfit = check.Rule{
	ID: "acidity-unfit", Group: check.Treatment, Severity: lang.Warning, Since: "0.2",
	Summary: "The range of pH is wider than the metals bear.",
	Why:     "Below the range steel rusts, above it aluminum dissolves.",
	Mend:    "keep the water within the range of the most sensitive metal",
	Sources: sources(cite.Source{Work: "VDI 2035-1", Edition: "2021", Clause: "acidity of heating water", Read: cite.Memory}),
	Run: func(p *check.Pass) {
		st := p.Plant.Block("water-quality").Child("acidity")
		v := st.Get("acidity")
		if v.Open() {
			p.Unknown(st, "the range of pH that the water is kept in (acidity)")
		}
		if !v.Known() {
			return
		}
		least, most, aluminum := p.Limit("acidity-least"), p.Limit("acidity-most"), p.Limit("acidity-most-aluminium")
		metal := "steel"
		var open *plant.Part // the first unit whose metal may be aluminum
		for _, u := range p.Plant.Units() {
			m := u.Get("exchanger")
			if open == nil && !m.Known() {
				open = u
			}
			if m.Is("aluminium") {
				most, metal = aluminum, "aluminum"
			}
		}
		if v.Num >= least.Num*(1-1e-9) && v.Num2 <= most.Num*(1+1e-9) {
			if open != nil && v.Num2 > aluminum.Num*(1+1e-9) {
				p.Unknown(open, "the metal of the heat exchanger of "+open.Label())
			}
			return
		}
		band := lang.Num(least.Num, 3) + " to " + lang.Num(most.Num, 3) + " pH"
		p.Report(st, check.Finding{
			Span: v.Span(), Found: lang.Num(v.Num, 3) + " to " + lang.Num(v.Num2, 3) + " pH", Limit: band, Source: most.Source,
			Message: "The water is to be kept from " + lang.Num(v.Num, 3) + " to " + lang.Num(v.Num2, 3) + " pH; with " + metal + " exchangers " + band + " fit.",
		})
	},
}

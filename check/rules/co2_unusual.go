package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleCo2Unusual)

var ruleCo2Unusual = check.Rule{
	ID: "co2-unusual", Group: check.Flue, Severity: lang.Warning, Since: "0.1",
	Summary: "The stated CO2 of a unit is unusual for its gas.",
	Why:     "Mass of products, dew point and condensate follow from the CO2; a slip here spoils them all.",
	Mend:    "check the unit's data",
	Limits:  "Natural gas only.",
	Sources: sources(cite.Source{Work: "CO2 of condensing units on natural gas, 8 to 10.5 %", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		if !p.Plant.Block("basis").Child("gas").Get("fuel").Is("natural") {
			return
		}
		low, high := p.Limit("co2-usual-least"), p.Limit("co2-usual-most")
		said := map[*plant.Part]bool{}
		for _, u := range p.Plant.Units() {
			for _, s := range u.Child("flue-data").Children("co2") {
				v := s.First()
				if !v.Known() || said[s] || v.Num >= low.Num && v.Num <= high.Num {
					continue
				}
				said[s] = true
				p.Report(s, check.Finding{
					Part: u.Label(), Span: v.Span(), Found: p.In(v.Num, "%"), Limit: low.Text() + " to " + high.Text(), Source: low.Source,
					Message: "A CO2 of " + p.In(v.Num, "%") + " is unusual for natural gas.",
				})
			}
		}
	},
}

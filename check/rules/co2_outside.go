package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/lang"
)

var _ = register(&ruleCo2Outside)

var ruleCo2Outside = check.Rule{
	ID: "co2-outside", Group: check.Record, Severity: lang.Warning, Since: "0.2",
	Summary: "The CO2 of a unit is outside the range of its data.",
	Why:     "Too little wastes heat and burns unstably; too much makes carbon monoxide.",
	Mend:    "set the gas and air of the unit within its range",
	Sources: sources(sourceUnitData),
	Run: func(p *check.Pass) {
		for _, r := range readings(p.Plant) {
			v := r.part.Get("co2")
			if !v.Known() || !credible(p, r.part) {
				continue
			}
			limits := r.unit.Child("combustion-limits")
			if limits == nil {
				p.Unknown(r.part, "the combustion limits of "+r.unit.Label()+" (combustion-limits)")
				continue
			}
			for _, l := range limits.Children("co2") {
				band := l.Get("co2")
				if !l.Get("at").Is(fireWord(r.full)) || !band.Known() || v.Num >= band.Num*(1-1e-9) && v.Num <= band.Num2*(1+1e-9) {
					continue
				}
				text := p.In(band.Num, "%") + " to " + p.In(band.Num2, "%")
				p.Report(r.part, check.Finding{Part: r.unit.Label(), Span: v.Span(), Found: p.In(v.Num, "%"), Limit: text, Message: r.unit.Label() + " has " + p.In(v.Num, "%") + " of CO2 at " + r.fire() + "; its data ask for " + text + "."})
			}
		}
	},
}

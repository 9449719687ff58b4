package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/flue"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleFluePressureOverClass)

var ruleFluePressureOverClass = check.Rule{
	ID: "flue-pressure-over-class", Group: check.Flue, Severity: lang.Error, Since: "0.1",
	Summary: "The pressure in a flue is more than its class stands.",
	Why:     "A flue over its class leaks products into the building.",
	Mend:    "take a larger flue or a higher pressure class",
	Limits:  "The 40 and 20 Pa of classes N1 and N2 are test pressures: they stand no overpressure at all.",
	Sources: sources(flue.SourceClasses),
	Run: func(p *check.Pass) {
		for _, part := range classedPieces(p.Plant) {
			class, ok := pressureClass(part)
			if !ok {
				continue
			}
			limit := p.NumberLimit(class.Operating, lang.Pressure, "Pa", class.Source)
			f := p.AtMost(p.Results.Get(part, "pressure", solve.AllFull), limit)
			if f == nil {
				continue
			}
			f.Severity = lang.Error
			f.Message = part.Label() + " works at " + f.Found + " with all units at full fire; its class " + class.Name + " is for up to " + p.In(class.Operating, "Pa") + "."
			f.Span = part.Get("class").Span()
			p.Report(part, *f)
		}
	},
}

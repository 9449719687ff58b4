package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// written is the unit in which the text writes a value; the usual one where it
// cannot be told.
func written(v plant.Value, usual string) string {
	if v.Field != nil && len(v.Field.Values) > 0 {
		if e := v.Field.Values[0].Expr; e != nil && e.UnitText != "" {
			return e.UnitText
		}
	}
	return usual
}

// system is the system of units that the plant speaks.
func system(p *check.Pass) lang.System {
	if p.Plant.US() {
		return lang.US
	}
	return lang.Metric
}

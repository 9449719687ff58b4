package draw

import (
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

// Unit is the unit in which a computed value of a plant is drawn: the usual one
// where the jurisdiction speaks US units, otherwise the value's own.
func Unit(p *plant.Plant, q *solve.Quantity) string {
	if p.US() {
		return lang.UsualUnit(q.Num, q.Dim, lang.US)
	}
	if q.Unit != "" {
		return q.Unit
	}
	return lang.UsualUnit(q.Num, q.Dim, lang.Metric)
}

// printed is a computed value with its unit.
func printed(p *plant.Plant, q *solve.Quantity) string {
	if unit := Unit(p, q); unit != "" {
		return lang.In(q.Num, unit)
	}
	return lang.Quantity(q.Num, q.Dim, lang.Metric)
}

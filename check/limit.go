package check

import (
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/tables"
	"example.org/tundish/lang"
)

// Limit is a limit value with its source: from a table, or from the plant
// itself (a unit's own minimum).
type Limit = tables.Limit

// StatedLimit makes a limit of a value that the specification or a catalogue
// states: a unit's least gas pressure, a floor's allowed load.
func (p *Pass) StatedLimit(v plant.Value, unit, work string) *Limit {
	l := p.NumberLimit(v.Num, v.Slot.Dim, unit, cite.Source{Work: work, Read: cite.Published})
	if v.File != nil && v.Stmt != nil {
		l.Origin = lang.Related{File: v.File.Source.Name, Span: v.Span(), Message: "the limit is stated here"}
	}
	return l
}

// NumberLimit makes a limit of a number that the rule derives from physics or
// from other values, with the source of the derivation.
func (p *Pass) NumberLimit(num float64, dim lang.Dimension, unit string, src cite.Source) *Limit {
	r := p.rep
	if len(r.limits) == cap(r.limits) { // those handed out stay where they are
		r.limits = make([]Limit, 0, max(8, 2*cap(r.limits)))
	}
	r.limits = append(r.limits, Limit{Num: num, Dim: dim, Unit: unit, Source: src})
	return &r.limits[len(r.limits)-1]
}

// guard is the relative slack of every comparison, so that machines that fuse
// multiply and add judge alike. Equal passes.
const guard = 1e-9

func atMost(v, limit float64) bool  { return v <= limit+guard*max(abs(v), abs(limit)) }
func atLeast(v, limit float64) bool { return v >= limit-guard*max(abs(v), abs(limit)) }

func abs(v float64) float64 {
	if v < 0 {
		return -v
	}
	return v
}

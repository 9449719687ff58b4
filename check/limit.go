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
func StatedLimit(v plant.Value, unit, work string) Limit {
	l := Limit{Num: v.Num, Dim: v.Slot.Dim, Unit: unit, Source: cite.Source{Work: work, Read: cite.Published}}
	if v.File != nil && v.Stmt != nil {
		l.Origin = lang.Related{File: v.File.Source.Name, Span: v.Span(), Message: "the limit is stated here"}
	}
	return l
}

// NumberLimit makes a limit of a number that the rule derives from physics or
// from other values, with the source of the derivation.
func NumberLimit(num float64, dim lang.Dimension, unit string, src cite.Source) Limit {
	return Limit{Num: num, Dim: dim, Unit: unit, Source: src}
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

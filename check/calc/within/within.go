// Package within guards the ranges of the calculations: a value outside the
// range of a method is an error that names it, never an answer by
// extrapolation. The package knows no formula.
package within

import "strconv"

// Error says which input lies outside the range of a method.
type Error struct {
	Name      string // the input in words, "bore"
	Value     float64
	Low, High float64
	Unit      string // unit of Value, Low and High; empty for a pure number
}

// Error gives the input, its value and the range.
func (e *Error) Error() string {
	number := func(v float64) string { return strconv.FormatFloat(v, 'g', 6, 64) }
	unit := e.Unit
	if unit != "" {
		unit = " " + unit
	}
	return e.Name + " is " + number(e.Value) + unit + "; the method holds from " +
		number(e.Low) + " to " + number(e.High) + unit
}

// Range returns nil when low <= v <= high and an *Error otherwise. A value
// that is not a number is outside every range.
func Range(name string, v, low, high float64, unit string) error {
	if v >= low && v <= high {
		return nil
	}
	return &Error{Name: name, Value: v, Low: low, High: high, Unit: unit}
}

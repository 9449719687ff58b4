package flue

import (
	"errors"

	"example.org/tundish/check/calc/within"
)

// FanPoint is one point of what a unit's fan can push at its flue socket.
type FanPoint struct {
	MassFlow float64 // kg/s
	Pressure float64 // Pa
}

// ErrFan is returned for points that do not rise in mass flow.
var ErrFan = errors.New("the points of a fan must stand in the order of their mass flow, at least one of them")

// FanPressure is the pressure in Pa that a unit can push at a mass flow in
// kg/s, along straight lines between the points of its maker; a mass flow
// outside them is an error. One point answers for its own mass flow only.
// Source: the maker's points; between them common practice.
func FanPressure(points []FanPoint, mass float64) (float64, error) {
	if len(points) == 0 {
		return 0, ErrFan
	}
	for i := 1; i < len(points); i++ {
		if !(points[i].MassFlow > points[i-1].MassFlow) {
			return 0, ErrFan
		}
	}
	first, last := points[0], points[len(points)-1]
	if err := within.Range("mass flow of the fan", mass, first.MassFlow*(1-1e-9), last.MassFlow*(1+1e-9), "kg/s"); err != nil {
		return 0, err
	}
	for i := 1; i < len(points); i++ {
		if a, b := points[i-1], points[i]; mass <= b.MassFlow {
			part := max(0, (mass-a.MassFlow)/(b.MassFlow-a.MassFlow))
			return a.Pressure + part*(b.Pressure-a.Pressure), nil
		}
	}
	return last.Pressure, nil
}

package vessel

import (
	"errors"

	"example.org/tundish/check/calc/within"
)

// UKFactor is one cell of the UK vessel table.
type UKFactor struct {
	SafetyValve float64 // bar
	Initial     float64 // bar: precharge and cold fill
	Factor      float64 // vessel volume over system volume
}

var ukFactors = [...]UKFactor{
	{3.0, 0.5, 0.0833},
	{3.0, 0.75, 0.093},
	{3.0, 1.0, 0.109},
	{3.0, 1.5, 0.156},
	{2.5, 0.5, 0.094},
	{2.5, 1.5, 0.237},
	{2.0, 0.5, 0.113},
	{2.0, 1.0, 0.200},
}

// UKFactors returns the UK vessel table. Source: SourceUK.
func UKFactors() []UKFactor { return append([]UKFactor(nil), ukFactors[:]...) }

// ErrUKFactor is returned for pressures between the cells of the UK table.
var ErrUKFactor = errors.New("the UK vessel table has no cell for these pressures; take the closed form")

// ukCool is the factor for flow temperatures below 88 degC. Source: SourceUK.
const ukCool = 0.8

// UKPrinted is the vessel volume over the system volume as printed, for a flow
// temperature of 20 to 110 degC; below 88 degC the printed factor counts 0.8.
// Source: SourceUK.
func UKPrinted(safetyValve, initial, flow float64) (float64, error) {
	if err := within.Range("flow temperature", flow, 20, 110, "degC"); err != nil {
		return 0, err
	}
	for i := range ukFactors {
		if f := &ukFactors[i]; f.SafetyValve == safetyValve && f.Initial == initial {
			return cool(f.Factor, flow), nil
		}
	}
	return 0, ErrUKFactor
}

func cool(factor, flow float64) float64 {
	if flow < 88 {
		return factor * ukCool
	}
	return factor
}

// UKForm is the closed form through the UK table: safety valve 2 to 3 bar,
// initial pressure 0.5 to 1.5 bar and at least 0.6 bar below the safety valve's
// final pressure, flow temperature 20 to 110 degC.
//
//	V/Vs = 0.0491 (pf+1)/(pf-pi),  pf = psv - 0.35;  times 0.8 below 88 degC
//
// Source: SourceUKForm.
func UKForm(safetyValve, initial, flow float64) (float64, error) {
	if err := within.Range("set pressure of the safety valve", safetyValve, 2, 3, "bar"); err != nil {
		return 0, err
	}
	final := safetyValve - 0.35
	if err := within.Range("initial pressure", initial, 0.5, min(1.5, final-0.6), "bar"); err != nil {
		return 0, err
	}
	if err := within.Range("flow temperature", flow, 20, 110, "degC"); err != nil {
		return 0, err
	}
	return cool(0.0491*(final+1)/(final-initial), flow), nil
}

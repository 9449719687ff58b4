package valve

import (
	"errors"
	"math"

	"example.org/tundish/check/calc/within"
	"example.org/tundish/check/cite"
)

// ADPerArea is the heat in kW that one mm2 of flow area times discharge
// coefficient blows off at 3 bar. Source: SourceAD2000.
const ADPerArea = 1.26

// ADMost is the greatest heat output in kW to which ADPerArea applies. Source:
// SourceAD2000.
const ADMost = 2700.0

// ADCapacity is the heat in kW that a safety valve set at 3 bar blows off from
// hot water up to 120 degC.
//
//	P = 1.26 A0 alpha
//
// The narrowest flow area A0 is in mm2, 10 to 1e5, the certified coefficient
// alpha 0.05 to 1; above 2700 kW there is no answer. Source: SourceAD2000.
func ADCapacity(areaMM2, coefficient float64) (float64, error) {
	if err := checkSeat(areaMM2, coefficient); err != nil {
		return 0, err
	}
	p := ADPerArea * areaMM2 * coefficient
	if err := within.Range("capacity", p, 0, ADMost, "kW"); err != nil {
		return 0, err
	}
	return p, nil
}

// ADArea is the flow area times coefficient, A0 alpha in mm2, for a heat output
// of 1 to 2700 kW at 3 bar.
//
//	A0 alpha = P/1.26
//
// Source: SourceAD2000.
func ADArea(outputKW float64) (float64, error) {
	if err := within.Range("heat output", outputKW, 1, ADMost, "kW"); err != nil {
		return 0, err
	}
	return outputKW / ADPerArea, nil
}

func checkSeat(area, coefficient float64) error {
	if err := within.Range("flow area", area, 10, 1e5, "mm2"); err != nil {
		return err
	}
	return within.Range("discharge coefficient", coefficient, 0.05, 1, "")
}

// Size is one line of the table of safety valves by output.
type Size struct {
	Nominal int     // DN of the inlet
	Output  float64 // kW, greatest
	Source  cite.Source
}

var sizes = [...]Size{
	{15, 50, SourceNominalEnds},
	{20, 100, SourceNominalSteps},
	{25, 200, SourceNominalSteps},
	{32, 350, SourceNominalSteps},
	{40, 600, SourceNominalEnds},
	{50, 900, SourceNominalEnds},
}

// Sizes returns the table of safety valves by output, for 2.5 and 3 bar.
func Sizes() []Size { return append([]Size(nil), sizes[:]...) }

// ErrSetPressure is returned by the table for other set pressures than its own.
var ErrSetPressure = errors.New("the table of safety valves by size holds for a set pressure of 2.5 or 3 bar only; judge this valve by its stated capacity")

// ErrTooLarge is returned for more output than the table's largest valve
// blows off.
var ErrTooLarge = errors.New("no safety valve of the table blows off more than 900 kW")

func checkSet(setBar float64) error {
	// A bar that was converted from Pa may miss the figure by its last digits.
	if math.Abs(setBar-2.5) < 1e-6 || math.Abs(setBar-3) < 1e-6 {
		return nil
	}
	return ErrSetPressure
}

// SizeFor is the smallest safety valve of the table for a heat output above 0
// to 900 kW and a set pressure of 2.5 or 3 bar. Sources: those of the line.
func SizeFor(outputKW, setBar float64) (Size, error) {
	if err := checkSet(setBar); err != nil {
		return Size{}, err
	}
	if err := within.Range("heat output", outputKW, 1e-3, 1e6, "kW"); err != nil {
		return Size{}, err
	}
	for i := range sizes {
		if outputKW <= sizes[i].Output {
			return sizes[i], nil
		}
	}
	return Size{}, ErrTooLarge
}

// SizeOf is the line of a nominal size at a set pressure of 2.5 or 3 bar.
func SizeOf(nominal int, setBar float64) (Size, error) {
	if err := checkSet(setBar); err != nil {
		return Size{}, err
	}
	for i := range sizes {
		if sizes[i].Nominal == nominal {
			return sizes[i], nil
		}
	}
	return Size{}, &within.Error{Name: "nominal size of the safety valve", Value: float64(nominal), Low: 15, High: 50, Unit: "(sizes of the table)"}
}

// PressureRise is the rise in bar over the set pressure at which a safety valve
// blows its full capacity, for set pressures of 0.5 to 25 bar.
//
//	rise = 0.5 bar to 5 bar, 10 % above
//
// Source: SourceRise.
func PressureRise(setBar float64) (float64, error) {
	if err := within.Range("set pressure", setBar, 0.5, 25, "bar"); err != nil {
		return 0, err
	}
	if setBar <= 5 {
		return 0.5, nil
	}
	return 0.1 * setBar, nil
}

// LeastSet is the least set pressure in bar over a greatest working pressure of
// 0 to 25 bar.
//
//	p >= working + max(0.5 bar, 10 %)
//
// Source: SourceSetPressure.
func LeastSet(workingBar float64) (float64, error) {
	if err := within.Range("working pressure", workingBar, 0, 25, "bar"); err != nil {
		return 0, err
	}
	return workingBar + math.Max(0.5, 0.1*workingBar), nil
}

package gas

import (
	"math"

	"example.org/tundish/check/calc/within"
)

// USGas holds the two constants of the US equations.
type USGas struct {
	Cr float64 // of both equations, ft3/h with in w.c. or psi, per 1000 ft
	Y  float64 // of the high-pressure equation
}

// The gases of the US equations. Sources: SourceLowPressure,
// SourceHighPressure.
var (
	USNatural = USGas{Cr: 0.6094, Y: 0.9992} // specific gravity 0.60
	USPropane = USGas{Cr: 1.2462, Y: 0.9910} // undiluted
)

const (
	usExponent = 0.206
	usFlow     = 0.381
	usLow      = 19.17
	usHigh     = 18.93
	waterInch  = 249.08891 // Pa per in w.c., conventional water
	psi        = 6894.757293168
)

func checkUS(gas USGas, length float64) error {
	if err := within.Range("constant Cr", gas.Cr, 0.1, 5, ""); err != nil {
		return err
	}
	return within.Range("length", length, 1, 5000, "ft")
}

// LowPressureCapacity is the flow in ft3/h of a pipe with an inlet below
// 1.5 psi gauge.
//
//	D = Q^0.381 / (19.17 (dH/(Cr L))^0.206)
//
// Bore D in inches (0.2 to 24), length in feet (1 to 5000), drop dH in in w.c.
// (0.01 to 20.8, half of 1.5 psi). It gives 0.4 to 0.9 % more than the printed
// tables: within 1 % of a size limit read the table. Source: SourceLowPressure.
func LowPressureCapacity(gas USGas, boreIn, lengthFt, dropInWC float64) (float64, error) {
	if err := checkUS(gas, lengthFt); err != nil {
		return 0, err
	}
	if err := within.Range("bore", boreIn, 0.2, 24, "in"); err != nil {
		return 0, err
	}
	if err := within.Range("drop", dropInWC, 0.01, 20.8, "in w.c."); err != nil {
		return 0, err
	}
	return math.Pow(usLow*boreIn*math.Pow(dropInWC/(gas.Cr*lengthFt), usExponent), 1/usFlow), nil
}

// LowPressureBore is the bore in inches that passes a flow in ft3/h (1 to 1e6);
// the inverse of LowPressureCapacity. Source: SourceLowPressure.
func LowPressureBore(gas USGas, flowFt3H, lengthFt, dropInWC float64) (float64, error) {
	if err := checkUS(gas, lengthFt); err != nil {
		return 0, err
	}
	if err := within.Range("flow", flowFt3H, 1, 1e6, "ft3/h"); err != nil {
		return 0, err
	}
	if err := within.Range("drop", dropInWC, 0.01, 20.8, "in w.c."); err != nil {
		return 0, err
	}
	return math.Pow(flowFt3H, usFlow) / (usLow * math.Pow(dropInWC/(gas.Cr*lengthFt), usExponent)), nil
}

// LowPressureDrop is the drop in in w.c. of a flow in ft3/h in a bore in
// inches; the equation of LowPressureCapacity solved for dH. A drop above
// 20.8 in w.c. is outside the equation. Source: SourceLowPressure.
func LowPressureDrop(gas USGas, boreIn, lengthFt, flowFt3H float64) (float64, error) {
	if err := checkUS(gas, lengthFt); err != nil {
		return 0, err
	}
	if err := within.Range("bore", boreIn, 0.2, 24, "in"); err != nil {
		return 0, err
	}
	if err := within.Range("flow", flowFt3H, 0, 1e6, "ft3/h"); err != nil {
		return 0, err
	}
	drop := gas.Cr * lengthFt * math.Pow(math.Pow(flowFt3H, usFlow)/(usLow*boreIn), 1/usExponent)
	if err := within.Range("drop", drop, 0, 20.8, "in w.c."); err != nil {
		return 0, err
	}
	return drop, nil
}

// highDrop checks two gauge pressures and returns P1^2 - P2^2 in psi absolute.
func highDrop(inletPsi, outletPsi float64) (float64, error) {
	if err := within.Range("inlet pressure", inletPsi, 1.5, 100, "psi"); err != nil {
		return 0, err
	}
	if err := within.Range("outlet pressure", outletPsi, 0, inletPsi*(1-1e-6), "psi"); err != nil {
		return 0, err
	}
	const atmosphere = Atmosphere / psi
	p1, p2 := inletPsi+atmosphere, outletPsi+atmosphere
	return (p1 - p2) * (p1 + p2), nil
}

// HighPressureCapacity is the flow in ft3/h of a pipe with an inlet of 1.5 psi
// gauge and more.
//
//	D = Q^0.381 / (18.93 ((P1^2 - P2^2) Y / (Cr L))^0.206)
//
// Bore D in inches (0.2 to 24), length in feet (1 to 5000), pressures given in
// psi gauge (1.5 to 100) and used absolute. Source: SourceHighPressure.
func HighPressureCapacity(gas USGas, boreIn, lengthFt, inletPsi, outletPsi float64) (float64, error) {
	if err := checkUS(gas, lengthFt); err != nil {
		return 0, err
	}
	if err := within.Range("bore", boreIn, 0.2, 24, "in"); err != nil {
		return 0, err
	}
	squares, err := highDrop(inletPsi, outletPsi)
	if err != nil {
		return 0, err
	}
	return math.Pow(usHigh*boreIn*math.Pow(squares*gas.Y/(gas.Cr*lengthFt), usExponent), 1/usFlow), nil
}

// HighPressureBore is the bore in inches that passes a flow in ft3/h (1 to
// 1e7); the inverse of HighPressureCapacity. Source: SourceHighPressure.
func HighPressureBore(gas USGas, flowFt3H, lengthFt, inletPsi, outletPsi float64) (float64, error) {
	if err := checkUS(gas, lengthFt); err != nil {
		return 0, err
	}
	if err := within.Range("flow", flowFt3H, 1, 1e7, "ft3/h"); err != nil {
		return 0, err
	}
	squares, err := highDrop(inletPsi, outletPsi)
	if err != nil {
		return 0, err
	}
	return math.Pow(flowFt3H, usFlow) / (usHigh * math.Pow(squares*gas.Y/(gas.Cr*lengthFt), usExponent)), nil
}

// GravityMultiplier turns a capacity of a table for specific gravity 0.60 into
// that of another gas, from 0.3 to 2.1.
//
//	multiplier = sqrt(0.60 / SG)
//
// Source: SourceGravityMultiplier.
func GravityMultiplier(specificGravity float64) (float64, error) {
	if err := within.Range("specific gravity", specificGravity, 0.3, 2.1, ""); err != nil {
		return 0, err
	}
	return math.Sqrt(0.60 / specificGravity), nil
}

// Spitzglass is the flow in ft3/h by the formula of that name. It decides no
// size: it is a second opinion on LowPressureCapacity, within 15 % of it from
// 1 1/4 to 3 in.
//
//	q = 3550 k sqrt(h/(L SG)),  k = sqrt(d^5 / (1 + 3.6/d + 0.03 d))
//
// Bore d in inches (0.2 to 12), length in feet, drop h in in w.c. (0.01 to
// 20.8). Source: SourceSpitzglass.
func Spitzglass(specificGravity, boreIn, lengthFt, dropInWC float64) (float64, error) {
	if err := within.Range("specific gravity", specificGravity, 0.3, 2.1, ""); err != nil {
		return 0, err
	}
	if err := within.Range("bore", boreIn, 0.2, 12, "in"); err != nil {
		return 0, err
	}
	if err := within.Range("length", lengthFt, 1, 5000, "ft"); err != nil {
		return 0, err
	}
	if err := within.Range("drop", dropInWC, 0.01, 20.8, "in w.c."); err != nil {
		return 0, err
	}
	d := boreIn
	k := math.Sqrt(d * d * d * d * d / (1 + 3.6/d + 0.03*d))
	return 3550 * k * math.Sqrt(dropInWC/(lengthFt*specificGravity)), nil
}

// Package separator computes a hydraulic separator (a low-loss header) between a
// primary and a secondary circuit: the temperatures that follow from unequal
// flows, and the bore for a velocity. It knows nothing of plants.
//
// Flows are in kg/s (or any one unit for both), temperatures in degC.
package separator

import (
	"math"

	"example.org/tundish/check/calc/within"
	"example.org/tundish/check/cite"
)

// Source of the formulas of this package.
var Source = cite.Source{
	Work: "heat balance of a hydraulic separator, mixing without loss", Read: cite.Memory,
	Note: "physics; the surplus of the larger flow turns back in the body",
}

func checkFlows(primary, secondary float64) error {
	if err := within.Range("primary flow", primary, math.SmallestNonzeroFloat64, 1e6, "kg/s"); err != nil {
		return err
	}
	return within.Range("secondary flow", secondary, 0, 1e6, "kg/s")
}

// Mix gives the temperature that the secondary circuit is supplied with and the
// temperature that goes back to the units, from the temperature that the units
// supply and the one that comes back from the secondary circuit. The primary flow
// is above 0.
//
//	m2 <= m1: supplied = supply, back = (m2 return + (m1 - m2) supply)/m1
//	m2 >  m1: supplied = (m1 supply + (m2 - m1) return)/m2, back = return
//
// Source: Source.
func Mix(primary, secondary, supply, ret float64) (supplied, back float64, err error) {
	if err := checkFlows(primary, secondary); err != nil {
		return 0, 0, err
	}
	if secondary <= primary {
		return supply, (secondary*ret + (primary-secondary)*supply) / primary, nil
	}
	return (primary*supply + (secondary-primary)*ret) / secondary, ret, nil
}

// Carry gives the same two temperatures when the heat is known instead of the
// secondary return: heat in W, specific heat in J/(kg.K), the units supply at
// supply. The secondary flow must be above 0.
//
//	back = supply - P/(m1 cp), supplied = supply where m2 <= m1,
//	else back + P/(m2 cp)
//
// Source: Source.
func Carry(primary, secondary, supply, heat, specificHeat float64) (supplied, back float64, err error) {
	if err := checkFlows(primary, secondary); err != nil {
		return 0, 0, err
	}
	if err := within.Range("specific heat", specificHeat, math.SmallestNonzeroFloat64, 1e5, "J/kg.K"); err != nil {
		return 0, 0, err
	}
	back = supply - heat/(primary*specificHeat)
	if secondary <= primary {
		return supply, back, nil
	}
	return back + heat/(secondary*specificHeat), back, nil
}

// Bore is the bore in m of a body in which a flow in m3/s runs at a velocity in m/s.
//
//	D = sqrt(4 V/(pi v))
func Bore(flow, velocity float64) (float64, error) {
	if err := within.Range("velocity", velocity, 1e-6, 100, "m/s"); err != nil {
		return 0, err
	}
	if err := within.Range("flow", flow, 0, 1e3, "m3/s"); err != nil {
		return 0, err
	}
	return math.Sqrt(4 * flow / (math.Pi * velocity)), nil
}

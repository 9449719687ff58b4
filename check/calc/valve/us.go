package valve

import (
	"math"

	"example.org/tundish/check/calc/within"
)

// USRating is the steam in lb/h that the relief valves of a unit must pass, for
// an output of 0 to 1e9 Btu/h.
//
//	m = output/1000
//
// Source: SourceUSCapacity.
func USRating(outputBtuH float64) (float64, error) {
	if err := within.Range("heat output", outputBtuH, 0, 1e9, "Btu/h"); err != nil {
		return 0, err
	}
	return outputBtuH / 1000, nil
}

// USLeastSize is the least size of a safety relief valve in inches. Source:
// SourceUSLeast.
const USLeastSize = 0.75

// USPressureRise is the greatest rise in psi over the greatest allowed working
// pressure, 1 to 160 psi gauge, while the relief valves blow.
//
//	20 % to 30 psi, 10 % above
//
// Source: SourceUSCapacity.
func USPressureRise(workingPsi float64) (float64, error) {
	if err := within.Range("allowed working pressure", workingPsi, 1, 160, "psi"); err != nil {
		return 0, err
	}
	if workingPsi <= 30 {
		return 0.2 * workingPsi, nil
	}
	return 0.1 * workingPsi, nil
}

// USFurtherSet is the highest set pressure in psi of a second or further relief
// valve on a unit of an allowed working pressure of 1 to 160 psi gauge.
//
//	working + 6 psi to 60 psi, + 10 % above
//
// Source: SourceUSCapacity.
func USFurtherSet(workingPsi float64) (float64, error) {
	if err := within.Range("allowed working pressure", workingPsi, 1, 160, "psi"); err != nil {
		return 0, err
	}
	return workingPsi + math.Max(6, 0.1*workingPsi), nil
}

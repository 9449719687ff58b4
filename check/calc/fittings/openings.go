package fittings

import (
	"math"

	"example.org/tundish/check/calc/within"
)

// Entrances and exits, K on the pipe's velocity.
const (
	SharpEntrance        = 0.5  // flush with the wall; source: SourceCrane
	SharpEntranceRennels = 0.57 // the same; source: SourceRennels
	InwardEntrance       = 0.78 // pipe reaching into the vessel; source: SourceCrane
	Exit                 = 1.0  // into a large vessel, any shape; source: SourceExit
)

func checkRounding(rounding float64) error {
	return within.Range("radius of the entrance over bore", rounding, 0, 1, "")
}

var craneEntrances = [...][2]float64{{0, 0.5}, {0.02, 0.28}, {0.04, 0.24}, {0.06, 0.15}, {0.10, 0.09}, {0.15, 0.04}} // radius over bore, K

// CraneEntrance is K of a rounded flush entrance by the radius over bore, 0 to
// 1, between printed radii along a straight line.
//
//	r/D 0 0.02 0.04 0.06 0.10, 0.15 and more: K 0.5 0.28 0.24 0.15 0.09 0.04
//
// Source: SourceCrane.
func CraneEntrance(rounding float64) (float64, error) {
	if err := checkRounding(rounding); err != nil {
		return 0, err
	}
	return along(craneEntrances[:], math.Min(rounding, 0.15)), nil
}

// RennelsEntrance is K of a rounded flush entrance by the radius over bore, 0
// to 1.
//
//	K = 0.0696 (1 - 0.569 r/D) l^2 + (l-1)^2,  l = 1 + 0.622 (1 - 0.30 sqrt(r/D) - 0.70 r/D)^4
//
// Source: SourceRennels.
func RennelsEntrance(rounding float64) (float64, error) {
	if err := checkRounding(rounding); err != nil {
		return 0, err
	}
	open := 1 - 0.30*math.Sqrt(rounding) - 0.70*rounding
	l := 1 + 0.622*open*open*open*open
	return 0.0696*(1-0.569*rounding)*l*l + (l-1)*(l-1), nil
}

// SwameeEntrance is K of a rounded flush entrance by the radius over bore, 0 to
// 1.
//
//	K = 0.5/(1 + 36 (r/D)^1.2)
//
// Source: SourceSwamee.
func SwameeEntrance(rounding float64) (float64, error) {
	if err := checkRounding(rounding); err != nil {
		return 0, err
	}
	return 0.5 / (1 + 36*math.Pow(rounding, 1.2)), nil
}

// RennelsInward is K of a sharp pipe that reaches into the vessel, by the
// thickness of its wall over bore, 0 to 1.
//
//	K = 1.12 - 22 t/D + 216 (t/D)^2 + 80 (t/D)^3 to t/D 0.05, else 0.57
//
// Source: SourceRennels.
func RennelsInward(wall float64) (float64, error) {
	if err := within.Range("wall over bore", wall, 0, 1, ""); err != nil {
		return 0, err
	}
	if wall > 0.05 {
		return SharpEntranceRennels, nil
	}
	return 1.12 + wall*(-22+wall*(216+wall*80)), nil
}

package flue

import (
	"math"

	"example.org/tundish/check/calc/within"
)

// FallOf is the fall in mm/m of an angle in degrees, 0 to 45.
//
//	fall = 1000 tan(angle)
//
// Source: SourceGeometry.
func FallOf(degrees float64) (float64, error) {
	if err := within.Range("angle of the fall", degrees, 0, 45, "deg"); err != nil {
		return 0, err
	}
	return 1000 * math.Tan(degrees*math.Pi/180), nil
}

// AngleOf is the angle in degrees of a fall in mm/m, 0 to 1000. Source:
// SourceGeometry.
func AngleOf(fall float64) (float64, error) {
	if err := within.Range("fall", fall, 0, 1000, "mm/m"); err != nil {
		return 0, err
	}
	return math.Atan(fall/1000) * 180 / math.Pi, nil
}

// FallMeets reports whether a fall in mm/m reaches a limit in degrees, both in
// whole mm: 52 mm/m meets 3 degrees (52.4). Source: SourceFall.
func FallMeets(fall, limitDegrees float64) (bool, error) {
	if err := within.Range("fall", fall, -1000, 1000, "mm/m"); err != nil {
		return false, err
	}
	limit, err := FallOf(limitDegrees)
	if err != nil {
		return false, err
	}
	return math.Round(fall) >= math.Round(limit), nil
}

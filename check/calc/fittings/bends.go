package fittings

import (
	"math"

	"example.org/tundish/check/calc/friction"
	"example.org/tundish/check/calc/within"
)

// CraneElbow is K of a standard screwed elbow of 90 or 45 degrees.
//
//	K = 30 fT at 90 degrees, 16 fT at 45 degrees
//
// Source: SourceCrane.
func CraneElbow(bore, angle float64) (float64, error) {
	if err := checkBore(bore); err != nil {
		return 0, err
	}
	switch angle {
	case 90:
		return 30 * turbulent(bore), nil
	case 45:
		return 16 * turbulent(bore), nil
	}
	return 0, &within.Error{Name: "angle of the elbow", Value: angle, Low: 45, High: 90, Unit: "deg (only these two)"}
}

var craneBends = [...][2]float64{ // radius of the axis over bore, K/fT at 90 degrees
	{1, 20},
	{1.5, 14},
	{2, 12},
	{3, 12},
	{4, 14},
	{6, 17},
	{8, 24},
	{10, 30},
	{12, 34},
	{14, 38},
	{16, 42},
	{20, 50},
}

// CraneBend is K of a smooth bend. The radius is that of the axis in bores, 1 to
// 20, between printed radii along a straight line; the angle from 90 to 360
// degrees counts further quarters, and one below 90 is the same formula.
//
//	K = K90 + (n-1) (pi/4 fT r/D + K90/2),  n = angle/90
//
// Angles from 30 to 360 degrees. Source: SourceCrane.
func CraneBend(bore, radius, angle float64) (float64, error) {
	if err := checkBore(bore); err != nil {
		return 0, err
	}
	if err := within.Range("radius of the bend in bores", radius, 1, 20, ""); err != nil {
		return 0, err
	}
	if err := within.Range("angle of the bend", angle, 30, 360, "deg"); err != nil {
		return 0, err
	}
	ft := turbulent(bore)
	quarter := along(craneBends[:], radius) * ft
	n := angle / 90
	return quarter + (n-1)*(math.Pi/4*ft*radius+quarter/2), nil
}

// along reads a table of rising first columns along straight lines; x lies
// within the table.
func along(table [][2]float64, x float64) float64 {
	i := 1
	for i < len(table)-1 && x > table[i][0] {
		i++
	}
	a, b := table[i-1], table[i]
	return a[1] + (b[1]-a[1])*(x-a[0])/(b[0]-a[0])
}

// RennelsBend is K of a smooth bend, its friction included. The radius is that
// of the axis in bores from 0.5 to 20, the angle from 0 to 180 degrees, the
// friction factor is Darcy's of the pipe, up to 0.1.
//
//	K = f a r/D + (0.10 + 2.4 f) sin(a/2) + 6.6 f (sqrt(sin(a/2)) + sin(a/2))/(r/D)^(4a/pi)
//
// with a in radians. Source: SourceRennels.
func RennelsBend(radius, angle, factor float64) (float64, error) {
	if err := within.Range("radius of the bend in bores", radius, 0.5, 20, ""); err != nil {
		return 0, err
	}
	if err := within.Range("angle of the bend", angle, 0, 180, "deg"); err != nil {
		return 0, err
	}
	if err := within.Range("friction factor", factor, 0, 0.1, ""); err != nil {
		return 0, err
	}
	a := angle * math.Pi / 180
	s := math.Sin(a / 2)
	return factor*a*radius + (0.10+2.4*factor)*s +
		6.6*factor*(math.Sqrt(s)+s)/math.Pow(radius, 4*a/math.Pi), nil
}

// RennelsBendAt is RennelsBend with the factor of Colebrook at a Reynolds
// number of 4000 to 1e9 and a roughness over bore of 0 to 0.05.
func RennelsBendAt(radius, angle, reynolds, roughness float64) (float64, error) {
	if err := within.Range("Reynolds number", reynolds, friction.Turbulent, 1e9, ""); err != nil {
		return 0, err
	}
	if err := within.Range("roughness over bore", roughness, 0, 0.05, ""); err != nil {
		return 0, err
	}
	return RennelsBend(radius, angle, friction.Colebrook(reynolds, roughness))
}

// ItoBend is K of a smooth bend in smooth pipe, its friction included. The
// radius is that of the axis in bores from 1 to 50, the angle 45, 90 or 180
// degrees, and Re (D/r)^2 must be above 360.
//
//	K = 0.00431 alpha angle Re^-0.17 (r/D)^0.84
//	alpha = 1 + 5.13 (D/r)^1.47 at 45;  0.95 + 4.42 (D/r)^1.96 at 90, 1 from r/D 9.85;  1 + 5.06 (D/r)^4.52 at 180
//
// Source: SourceIto.
func ItoBend(radius, angle, reynolds float64) (float64, error) {
	if err := within.Range("radius of the bend in bores", radius, 1, 50, ""); err != nil {
		return 0, err
	}
	if err := checkReynolds(reynolds); err != nil {
		return 0, err
	}
	if err := within.Range("Re (D/r)^2", reynolds/(radius*radius), 360, 1e9, ""); err != nil {
		return 0, err
	}
	alpha := 1.0
	switch angle {
	case 45:
		alpha += 5.13 * math.Pow(radius, -1.47)
	case 90:
		if radius < 9.85 {
			alpha = 0.95 + 4.42*math.Pow(radius, -1.96)
		}
	case 180:
		alpha += 5.06 * math.Pow(radius, -4.52)
	default:
		return 0, &within.Error{Name: "angle of the bend", Value: angle, Low: 45, High: 180, Unit: "deg (only 45, 90 and 180)"}
	}
	return 0.00431 * alpha * angle * math.Pow(reynolds, -0.17) * math.Pow(radius, 0.84), nil
}

// SwameeBend is K of a bend of any radius of the axis from 1 to 20 bores and an
// angle from 0 to 180 degrees.
//
//	K = (0.0733 + 0.923 (D/r)^3.5) sqrt(a), a in radians
//
// At a radius of one bore it gives about three times what the other methods
// give. Source: SourceSwamee.
func SwameeBend(radius, angle float64) (float64, error) {
	if err := within.Range("radius of the bend in bores", radius, 1, 20, ""); err != nil {
		return 0, err
	}
	if err := within.Range("angle of the bend", angle, 0, 180, "deg"); err != nil {
		return 0, err
	}
	return (0.0733 + 0.923*math.Pow(radius, -3.5)) * math.Sqrt(angle*math.Pi/180), nil
}

// RennelsMiter is K of a bend with a single miter, 0 to 90 degrees.
//
//	K = 0.42 sin(a/2) + 2.56 sin^3(a/2)
//
// Source: SourceRennels.
func RennelsMiter(angle float64) (float64, error) {
	if err := checkMiter(angle); err != nil {
		return 0, err
	}
	s := math.Sin(angle * math.Pi / 360)
	return 0.42*s + 2.56*s*s*s, nil
}

var craneMiters = [...][2]float64{{0, 2}, {15, 4}, {30, 8}, {45, 15}, {60, 25}, {75, 40}, {90, 60}} // degrees, K/fT

// CraneMiter is K of a bend with a single miter, 0 to 90 degrees, between
// printed angles along a straight line.
//
//	K = n fT,  n = 2 4 8 15 25 40 60 at 0 15 30 45 60 75 90 degrees
//
// Source: SourceCrane.
func CraneMiter(bore, angle float64) (float64, error) {
	if err := checkBore(bore); err != nil {
		return 0, err
	}
	if err := checkMiter(angle); err != nil {
		return 0, err
	}
	return along(craneMiters[:], angle) * turbulent(bore), nil
}

var blevinsMiters = [...][2]float64{ // degrees, K at Re 2e5
	{0, 0},
	{10, 0.025},
	{20, 0.055},
	{30, 0.1},
	{40, 0.2},
	{50, 0.35},
	{60, 0.5},
	{70, 0.7},
	{80, 0.9},
	{90, 1.1},
}

// BlevinsMiter is K of a bend with a single miter, 0 to 90 degrees, at a
// Reynolds number of 1e4 to 2e6, between printed angles along a straight line.
//
//	K = K(2e5) (2e5/Re)^0.2
//
// Source: SourceBlevins.
func BlevinsMiter(angle, reynolds float64) (float64, error) {
	if err := checkMiter(angle); err != nil {
		return 0, err
	}
	if err := within.Range("Reynolds number", reynolds, 1e4, 2e6, ""); err != nil {
		return 0, err
	}
	return along(blevinsMiters[:], angle) * math.Pow(2e5/reynolds, 0.2), nil
}

func checkMiter(angle float64) error {
	return within.Range("angle of the miter", angle, 0, 90, "deg")
}

package fittings

import (
	"math"

	"example.org/tundish/check/calc/within"
)

// ratio gives narrow over wide bore of a reducer, checked.
func ratio(narrow, wide float64) (float64, error) {
	if err := checkBore(narrow); err != nil {
		return 0, err
	}
	if err := checkBore(wide); err != nil {
		return 0, err
	}
	beta := narrow / wide
	return beta, within.Range("narrow bore over wide bore", beta, 0.05, 1, "")
}

func checkTaper(taper, least, most, factor float64) error {
	if err := within.Range("whole angle of the taper", taper, least, most, "deg"); err != nil {
		return err
	}
	return within.Range("friction factor", factor, 0, 0.1, "")
}

// wallFriction is the friction along a taper, on the narrow velocity.
func wallFriction(beta, half, factor float64) float64 {
	return factor * (1 - math.Pow(beta, 4)) / (8 * half)
}

// CraneContraction is K of a sudden contraction, on the narrow bore's
// velocity.
//
//	K = 0.5 (1 - b^2)
//
// Source: SourceCrane.
func CraneContraction(wide, narrow float64) (float64, error) {
	b, err := ratio(narrow, wide)
	if err != nil {
		return 0, err
	}
	return 0.5 * (1 - b*b), nil
}

// RennelsContraction is K of a sudden contraction, on the narrow bore's
// velocity.
//
//	K = 0.0696 (1 - b^5) l^2 + (l-1)^2,  l = 1 + 0.622 (1 - 0.215 b^2 - 0.785 b^5)
//
// Source: SourceRennels.
func RennelsContraction(wide, narrow float64) (float64, error) {
	b, err := ratio(narrow, wide)
	if err != nil {
		return 0, err
	}
	b5 := math.Pow(b, 5)
	l := 1 + 0.622*(1-0.215*b*b-0.785*b5)
	return 0.0696*(1-b5)*l*l + (l-1)*(l-1), nil
}

// CraneTaper is K of a conical contraction, on the narrow bore's velocity, by
// the whole angle from 1 to 180 degrees.
//
//	K = 0.8 sin(a/2) (1-b^2) to 45 degrees, 0.5 sqrt(sin(a/2)) (1-b^2) above
//
// Source: SourceCrane.
func CraneTaper(wide, narrow, taper float64) (float64, error) {
	b, err := ratio(narrow, wide)
	if err != nil {
		return 0, err
	}
	if err := checkTaper(taper, 1, 180, 0); err != nil {
		return 0, err
	}
	half := math.Sin(taper * math.Pi / 360)
	if taper <= 45 {
		return 0.8 * half * (1 - b*b), nil
	}
	return 0.5 * math.Sqrt(half) * (1 - b*b), nil
}

// RennelsTaper is K of a conical contraction with its friction, on the narrow
// bore's velocity, by the whole angle from 1 to 180 degrees and Darcy's factor.
//
//	K = f (1-b^4)/(8 sin(a/2)) + 0.0696 sin(a/2) (1-b^5) l^2 + (l-1)^2
//	l = 1 + 0.622 (a/180)^0.8 (1 - 0.215 b^2 - 0.785 b^5)
//
// Source: SourceRennels.
func RennelsTaper(wide, narrow, taper, factor float64) (float64, error) {
	b, err := ratio(narrow, wide)
	if err != nil {
		return 0, err
	}
	if err := checkTaper(taper, 1, 180, factor); err != nil {
		return 0, err
	}
	half := math.Sin(taper * math.Pi / 360)
	b5 := math.Pow(b, 5)
	l := 1 + 0.622*math.Pow(taper/180, 0.8)*(1-0.215*b*b-0.785*b5)
	return wallFriction(b, half, factor) + 0.0696*half*(1-b5)*l*l + (l-1)*(l-1), nil
}

// Enlargement is K of a sudden enlargement, on the narrow bore's velocity.
//
//	K = (1 - b^2)^2
//
// Source: SourceSudden.
func Enlargement(narrow, wide float64) (float64, error) {
	b, err := ratio(narrow, wide)
	if err != nil {
		return 0, err
	}
	return (1 - b*b) * (1 - b*b), nil
}

// CraneDiffuser is K of a conical enlargement, on the narrow bore's velocity,
// by the whole angle from 1 to 180 degrees.
//
//	K = 2.6 sin(a/2) (1-b^2)^2 to 45 degrees, (1-b^2)^2 above
//
// Source: SourceCrane.
func CraneDiffuser(narrow, wide, taper float64) (float64, error) {
	b, err := ratio(narrow, wide)
	if err != nil {
		return 0, err
	}
	if err := checkTaper(taper, 1, 180, 0); err != nil {
		return 0, err
	}
	k := (1 - b*b) * (1 - b*b)
	if taper <= 45 {
		k *= 2.6 * math.Sin(taper*math.Pi/360)
	}
	return k, nil
}

// RennelsDiffuser is K of a conical enlargement with its friction, on the
// narrow bore's velocity, by the whole angle from 1 to 60 degrees and Darcy's
// factor.
//
//	K = 8.30 tan(a/2)^1.75 (1-b^2)^2 + f (1-b^4)/(8 sin(a/2))    to 20 degrees
//	K = [1.366 sqrt(sin(2 pi (a-15)/180)) - 0.170 - 3.28 (0.0625 - b^4) sqrt((a-20)/40)] (1-b^2)^2 + friction    to 60
//
// The term with 3.28 counts below b 0.5 only. Source: SourceRennels.
func RennelsDiffuser(narrow, wide, taper, factor float64) (float64, error) {
	b, err := ratio(narrow, wide)
	if err != nil {
		return 0, err
	}
	if err := checkTaper(taper, 1, 60, factor); err != nil {
		return 0, err
	}
	half := taper * math.Pi / 360
	jump := (1 - b*b) * (1 - b*b)
	rub := wallFriction(b, math.Sin(half), factor)
	if taper <= 20 {
		return 8.30*math.Pow(math.Tan(half), 1.75)*jump + rub, nil
	}
	k := 1.366*math.Sqrt(math.Sin(2*math.Pi*(taper-15)/180)) - 0.170
	if b < 0.5 {
		k -= 3.28 * (0.0625 - math.Pow(b, 4)) * math.Sqrt((taper-20)/40)
	}
	return k*jump + rub, nil
}

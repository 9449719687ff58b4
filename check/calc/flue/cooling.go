package flue

import (
	"math"

	"example.org/tundish/check/calc/within"
)

// Cooled gives the temperature in degC at the end of a pipe and its mean over
// the length.
//
//	t_out = t_amb + (t_in - t_amb) exp(-K)
//	t_mean = t_amb + (t_in - t_amb) (1 - exp(-K))/K,  K = U pi D L/(m cp)
//
// In from -60 to 600 degC, ambient from -60 to 60 degC, the heat loss number K
// from 0 to 100. Without heat loss (K = 0) all three are the same. Source:
// SourceCooling.
func Cooled(in, ambient, number float64) (out, mean float64, err error) {
	if err := checkFlue(in); err != nil {
		return 0, 0, err
	}
	if err := within.Range("temperature around the flue", ambient, coldestAir, hottestAir, "degC"); err != nil {
		return 0, 0, err
	}
	if err := within.Range("heat loss number K", number, 0, 100, ""); err != nil {
		return 0, 0, err
	}
	out, mean = cooled(in, ambient, number)
	return out, mean, nil
}

func cooled(in, ambient, number float64) (out, mean float64) {
	over := in - ambient
	gone := -math.Expm1(-number)
	out = in - over*gone
	mean = in
	if number > 1e-12 {
		mean = ambient + over*gone/number
	}
	return out, mean
}

// Transmittance is the heat transmittance U in W/(m2.K), on the inner surface,
// of a flue wall.
//
//	1/U = 1/alpha_i + R + (D/D_outer)/alpha_o
//
// Film coefficients in W/(m2.K) from 1 to 200, the resistance of the wall R in
// m2.K/W on the inner surface from 0 to 5, the ratio of outer to inner
// diameter from 1 to 3. Source: SourceCooling.
func Transmittance(inner, resistance, outer, ratio float64) (float64, error) {
	if err := within.Range("inner film coefficient", inner, 1, 200, "W/(m2.K)"); err != nil {
		return 0, err
	}
	if err := within.Range("resistance of the wall", resistance, 0, 5, "m2.K/W"); err != nil {
		return 0, err
	}
	if err := within.Range("outer film coefficient", outer, 1, 200, "W/(m2.K)"); err != nil {
		return 0, err
	}
	if err := within.Range("ratio of the diameters", ratio, 1, 3, ""); err != nil {
		return 0, err
	}
	return 1 / (1/inner + resistance + 1/(ratio*outer)), nil
}

package fittings

import "example.org/tundish/check/calc/within"

// kvPerCv is Kv of Cv 1: a US gallon a minute in m3/h over the root of a psi in
// bar, units exact. Source: SourceCv.
const kvPerCv = 0.8649776554423018

func checkCoefficient(name string, v float64) error {
	return within.Range(name, v, 1e-6, 1e6, "")
}

// KvToCv turns a flow coefficient in m3/h at 1 bar into US gallons a minute at
// 1 psi, 1e-6 to 1e6. Source: SourceCv.
func KvToCv(kv float64) (float64, error) {
	if err := checkCoefficient("Kv", kv); err != nil {
		return 0, err
	}
	return kv / kvPerCv, nil
}

// CvToKv turns a flow coefficient in US gallons a minute at 1 psi into m3/h at
// 1 bar, 1e-6 to 1e6. Source: SourceCv.
func CvToKv(cv float64) (float64, error) {
	if err := checkCoefficient("Cv", cv); err != nil {
		return 0, err
	}
	return cv * kvPerCv, nil
}

// KvToK gives the loss coefficient, on the velocity in the bore in m, of a
// part of a flow coefficient Kv in m3/h, 1e-6 to 1e6.
//
//	K = 1.6e9 D^4/Kv^2
//
// From dp = 1 bar (V/Kv)^2 and dp = K rho v^2/2 the factor is 1.5988e9; the
// round figure is the usual one and 0.08 % above. Source: SourceKv.
func KvToK(kv, bore float64) (float64, error) {
	if err := checkCoefficient("Kv", kv); err != nil {
		return 0, err
	}
	if err := checkBore(bore); err != nil {
		return 0, err
	}
	area := bore * bore
	return 1.6e9 * area * area / (kv * kv), nil
}

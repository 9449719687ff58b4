// Package exchanger computes heat exchangers without phase change: effectiveness,
// duty, outlet temperatures and mean temperature difference of a counter-flow
// (plate) exchanger. It knows nothing of plants.
//
// Flows are in kg/s, specific heats in J/(kg.K), temperatures in degC,
// conductances in W/K, duties in W.
package exchanger

import (
	"math"

	"example.org/tundish/check/calc/within"
	"example.org/tundish/check/cite"
)

// Source of the formulas of this package.
var Source = cite.Source{
	Work: "effectiveness and number of transfer units of a counter-flow exchanger", Read: cite.Memory,
	Note: "follows from the heat balance with constant specific heats",
}

// Side is one stream at its inlet.
type Side struct {
	Flow         float64 // kg/s, above 0
	SpecificHeat float64 // J/(kg.K), above 0
	Inlet        float64 // degC
}

// rate is the capacity rate in W/K.
func (s Side) rate() float64 { return s.Flow * s.SpecificHeat }

// Result is the state of an exchanger.
type Result struct {
	Effectiveness float64 // duty over the most that is thermodynamically possible
	Duty          float64 // W, above 0 from hot to cold
	HotOutlet     float64 // degC
	ColdOutlet    float64 // degC
	Mean          float64 // logarithmic mean temperature difference, K
}

// Effectiveness of a counter-flow exchanger from its number of transfer units
// NTU = UA/Cmin and the ratio of the capacity rates Cr = Cmin/Cmax in 0..1:
//
//	eps = (1 - exp(-NTU (1 - Cr))) / (1 - Cr exp(-NTU (1 - Cr))),
//	eps = NTU/(1 + NTU) for Cr = 1
//
// Source: Source.
func Effectiveness(ntu, ratio float64) (float64, error) {
	if err := within.Range("number of transfer units", ntu, 0, 1e3, "-"); err != nil {
		return 0, err
	}
	if err := within.Range("ratio of the capacity rates", ratio, 0, 1, "-"); err != nil {
		return 0, err
	}
	// With u = NTU (1 - Cr) the form -expm1(-u)/(1 - Cr + Cr (-expm1(-u))) keeps
	// its digits where the rates are nearly equal.
	d := 1 - ratio
	if d*ntu < 1e-12 {
		return ntu / (1 + ntu), nil
	}
	e := -math.Expm1(-ntu * d)
	return e / (d + ratio*e), nil
}

// CounterFlow gives the state of a counter-flow exchanger of a conductance UA in
// W/K, above 0. The hot stream must not enter colder than the cold one.
//
//	Q = eps Cmin (Th,in - Tc,in), Th,out = Th,in - Q/Ch, Tc,out = Tc,in + Q/Cc
//
// Source: Source.
func CounterFlow(hot, cold Side, conductance float64) (Result, error) {
	for _, c := range []struct {
		name string
		v    float64
		unit string
	}{
		{"hot flow", hot.Flow, "kg/s"},
		{"cold flow", cold.Flow, "kg/s"},
		{"specific heat of the hot side", hot.SpecificHeat, "J/kg.K"},
		{"specific heat of the cold side", cold.SpecificHeat, "J/kg.K"},
		{"conductance", conductance, "W/K"},
	} {
		if err := within.Range(c.name, c.v, math.SmallestNonzeroFloat64, 1e12, c.unit); err != nil {
			return Result{}, err
		}
	}
	if err := within.Range("cold inlet", cold.Inlet, -100, hot.Inlet, "degC"); err != nil {
		return Result{}, err
	}
	ch, cc := hot.rate(), cold.rate()
	least := min(ch, cc)
	eps, err := Effectiveness(conductance/least, least/max(ch, cc))
	if err != nil {
		return Result{}, err
	}
	r := Result{Effectiveness: eps, Duty: eps * least * (hot.Inlet - cold.Inlet)}
	r.HotOutlet, r.ColdOutlet = hot.Inlet-r.Duty/ch, cold.Inlet+r.Duty/cc
	// Q = UA LMTD by definition: no division of two small differences.
	r.Mean = r.Duty / conductance
	return r, nil
}

// MeanDifference is the logarithmic mean of the temperature differences in K at
// the two ends, both above 0:
//
//	LMTD = (d1 - d2)/ln(d1/d2), d1 where both are equal
//
// Source: Source.
func MeanDifference(d1, d2 float64) (float64, error) {
	if err := within.Range("temperature difference", min(d1, d2), math.SmallestNonzeroFloat64, 1e6, "K"); err != nil {
		return 0, err
	}
	x := (d1 - d2) / d2
	if math.Abs(x) < 1e-4 { // series: the quotient cancels
		return d2 * (1 + x/2 - x*x/12 + x*x*x/24), nil
	}
	return (d1 - d2) / math.Log1p(x), nil
}

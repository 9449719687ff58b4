// Package friction gives the Darcy friction factor of round pipes and the law
// of Darcy and Weisbach that uses it. It knows nothing of media or plants.
package friction

import (
	"math"

	"example.org/tundish/check/calc/within"
	"example.org/tundish/check/cite"
)

// Sources of the formulas of this package.
var (
	SourceLaminar   = cite.Source{Work: "Hagen-Poiseuille law, f = 64/Re", Read: cite.Memory, Note: "physics of laminar flow"}
	SourceColebrook = cite.Source{Work: "Colebrook's equation", Edition: "1939", Read: cite.Memory, Note: "solved to the last digits; compared with a table in 40 digits"}
	SourceDarcy     = cite.Source{Work: "law of Darcy and Weisbach", Read: cite.Memory, Note: "physics of pipe flow"}
)

// The bounds of the regimes by Reynolds number.
const (
	Laminar   = 2000.0 // up to here 64/Re
	Turbulent = 4000.0 // from here Colebrook
)

// Factor is the Darcy friction factor at a Reynolds number from 0 to 1e9 and a
// roughness over bore from 0 to 0.1.
//
//	f = 64/Re up to Re 2000;  1/sqrt f = -2 log10(eps/3.7 + 2.51/(Re sqrt f)) from Re 4000
//
// Between 2000 and 4000 no law is sure; the factor runs along a straight line
// from one to the other, so that solvers see no jump. That bridge is a
// convention, not physics. At Re 0 the factor has no meaning and is an error.
// Sources: SourceLaminar, SourceColebrook.
func Factor(reynolds, roughness float64) (float64, error) {
	if err := within.Range("Reynolds number", reynolds, 1e-9, 1e9, ""); err != nil {
		return 0, err
	}
	if err := within.Range("relative roughness", roughness, 0, 0.1, ""); err != nil {
		return 0, err
	}
	return Of(reynolds, roughness), nil
}

// Of is Factor without the checks, for solvers that hold the ranges themselves.
func Of(reynolds, roughness float64) float64 {
	switch {
	case reynolds <= Laminar:
		return 64 / reynolds
	case reynolds < Turbulent:
		low, high := 64/Laminar, Colebrook(Turbulent, roughness)
		return low + (high-low)*(reynolds-Laminar)/(Turbulent-Laminar)
	}
	return Colebrook(reynolds, roughness)
}

// twoOverLn10 turns 2 log10 into a natural logarithm.
const twoOverLn10 = 2 / math.Ln10

// Colebrook solves Colebrook's equation for any Reynolds number above 0.
//
//	x = -2 log10(eps/3.7 + 2.51 x/Re),  f = 1/x^2
//
// Source: SourceColebrook.
func Colebrook(reynolds, roughness float64) float64 {
	x, _ := Root(reynolds, roughness, Start(reynolds, roughness))
	return 1 / (x * x)
}

// Start guesses x = 1/sqrt f for Root. The equation put into its own right side
// twice, from x = 7, a factor of 0.02, is off by a few hundredths at most; a rough
// logarithm is good enough for it.
func Start(reynolds, roughness float64) float64 {
	a, b := roughness*(1/3.7), 2.51/reynolds
	x := max(1, -twoOverLn10*roughLog(a+7*b))
	return max(1, -twoOverLn10*roughLog(a+b*x))
}

// Root solves Colebrook's equation from a start for x = 1/sqrt f, and gives the t
// with which the slope of f Re^2 over Re is 2 f Re/(1+t).
//
// Each step is Newton's with Halley's correction for the curvature; the equation is
// so nearly straight that the error after a step is under 0.002 times the cube of
// the step. After one under 2e-4 that leaves the last bits only; after one under
// 0.02 it takes a last step by the same slope, of which 1e-11 is left at most.
// Source: SourceColebrook.
func Root(reynolds, roughness, start float64) (x, t float64) {
	a, b := roughness*(1/3.7), 2.51/reynolds
	x = start
	for range 50 {
		inner := a + b*x
		t = twoOverLn10 * b / inner
		slope := 1 / (1 + t)
		step := (x + twoOverLn10*log(inner)) * slope
		bent := step * t * t * slope
		step -= step * bent / (2*twoOverLn10 + bent)
		x -= step
		if size := math.Abs(step); size < 2e-4 {
			break
		} else if size < 0.02 {
			x -= (x + twoOverLn10*log(a+b*x)) * slope
			break
		}
	}
	return x, t
}

// roughLog is the natural logarithm of a number above 0 within 0.006: the exponent
// of its binary form, and a parabola for the digits.
func roughLog(v float64) float64 {
	bits := math.Float64bits(v)
	digits := math.Float64frombits(bits&(1<<52-1)|1023<<52) - 1
	return math.Ln2 * (float64(int(bits>>52)-1023) + digits*(1.3465-0.3465*digits))
}

// Velocity is the mean velocity in m/s of a volume flow in m3/s in a bore in m.
//
//	v = Q/(pi/4 D^2)
func Velocity(flow, bore float64) float64 { return flow / (math.Pi / 4 * bore * bore) }

// Gradient is the pressure lost by friction in Pa/m.
//
//	dp/L = f/D rho v^2/2
//
// Source: SourceDarcy.
func Gradient(factor, bore, density, velocity float64) float64 {
	return factor / bore * density * velocity * velocity / 2
}

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

// Colebrook solves Colebrook's equation for any Reynolds number above 0 by
// Newton's method on x = 1/sqrt f. Source: SourceColebrook.
func Colebrook(reynolds, roughness float64) float64 {
	a, b := roughness/3.7, 2.51/reynolds
	x := -1.8 * math.Log10(math.Pow(a, 1.11)+6.9/reynolds) // Haaland's start
	if x < 1 {
		x = 1
	}
	for range 50 {
		y := a + b*x
		g := x + 2*math.Log10(y)
		dg := 1 + 2*b/(y*math.Ln10)
		d := g / dg
		x -= d
		if math.Abs(d) <= 1e-14*x {
			break
		}
	}
	return 1 / (x * x)
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

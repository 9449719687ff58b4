package valve

import (
	"errors"
	"math"

	"example.org/tundish/check/calc/within"
)

// Orifice is a sharp orifice plate with corner taps in a pipe.
type Orifice struct {
	Bore float64 // of the pipe, m, 0.05 to 1
	Hole float64 // m, at least 0.0125; hole over bore 0.1 to 0.75
}

// ErrOrificeFlow is returned where the flow of an orifice does not settle.
var ErrOrificeFlow = errors.New("the flow of the orifice does not settle")

func (o Orifice) beta() (float64, error) {
	if err := within.Range("bore", o.Bore, 0.05, 1, "m"); err != nil {
		return 0, err
	}
	if err := within.Range("hole of the orifice", o.Hole, 0.0125, 0.75, "m"); err != nil {
		return 0, err
	}
	beta := o.Hole / o.Bore
	return beta, within.Range("hole over bore", beta, 0.1, 0.75, "")
}

// Coefficient is the discharge coefficient C at a Reynolds number of the pipe
// of 5000 to 1e8.
//
//	C = 0.5961 + 0.0261 b^2 - 0.216 b^8 + 0.000521 (1e6 b/Re)^0.7
//	    + (0.0188 + 0.0063 A) b^3.5 (1e6/Re)^0.3,  A = (19000 b/Re)^0.8
//	    + 0.011 (0.75-b) (2.8 - D/25.4 mm) for bores under 71.12 mm
//
// Source: SourceOrifice.
func (o Orifice) Coefficient(reynolds float64) (float64, error) {
	b, err := o.beta()
	if err != nil {
		return 0, err
	}
	if err := within.Range("Reynolds number", reynolds, 5000, 1e8, ""); err != nil {
		return 0, err
	}
	return o.coefficient(b, reynolds), nil
}

func (o Orifice) coefficient(b, reynolds float64) float64 {
	a := math.Pow(19000*b/reynolds, 0.8)
	c := 0.5961 + 0.0261*b*b - 0.216*math.Pow(b, 8) +
		0.000521*math.Pow(1e6*b/reynolds, 0.7) +
		(0.0188+0.0063*a)*math.Pow(b, 3.5)*math.Pow(1e6/reynolds, 0.3)
	if o.Bore < 0.07112 {
		c += 0.011 * (0.75 - b) * (2.8 - o.Bore/0.0254)
	}
	return c
}

// Flow is the mass flow in kg/s of a liquid of a density in kg/m3 and a
// viscosity in Pa.s at a drop across the taps in Pa, with the coefficient that
// belongs to it.
//
//	m = C/sqrt(1-b^4) pi/4 d^2 sqrt(2 rho dp)
//
// Found by going back and forth between m and C. Source: SourceOrifice.
func (o Orifice) Flow(dropPa, density, viscosity float64) (kgS, coefficient float64, err error) {
	b, err := o.beta()
	if err != nil {
		return 0, 0, err
	}
	if err := checkWater(dropPa, density); err != nil {
		return 0, 0, err
	}
	if err := within.Range("viscosity", viscosity, 1e-5, 1, "Pa.s"); err != nil {
		return 0, 0, err
	}
	base := math.Pi / 4 * o.Hole * o.Hole * math.Sqrt(2*density*dropPa/(1-math.Pow(b, 4)))
	perKg := 4 / (math.Pi * o.Bore * viscosity) // Re of 1 kg/s
	c := 0.6
	for range 50 {
		next := o.coefficient(b, base*c*perKg)
		if math.Abs(next-c) <= 1e-14 {
			_, err := o.Coefficient(base * c * perKg)
			return base * next, next, err
		}
		c = next
	}
	return 0, 0, ErrOrificeFlow
}

// PermanentLoss is the part of the drop across the taps, in Pa, that the pipe
// does not get back, with a discharge coefficient of 0.5 to 1.
//
//	loss/dp = (sqrt(1 - b^4 (1-C^2)) - C b^2)/(sqrt(1 - b^4 (1-C^2)) + C b^2)
//
// Source: SourceOrifice.
func (o Orifice) PermanentLoss(dropPa, coefficient float64) (float64, error) {
	b, err := o.beta()
	if err != nil {
		return 0, err
	}
	if err := within.Range("pressure drop", dropPa, 0, 1e7, "Pa"); err != nil {
		return 0, err
	}
	if err := within.Range("discharge coefficient", coefficient, 0.5, 1, ""); err != nil {
		return 0, err
	}
	root := math.Sqrt(1 - math.Pow(b, 4)*(1-coefficient*coefficient))
	part := coefficient * b * b
	return dropPa * (root - part) / (root + part), nil
}

// Expansibility is the factor of a gas from pressures in Pa absolute, outlet
// over inlet 0.75 to 1, and an isentropic exponent of 1.05 to 1.7.
//
//	e = 1 - (0.351 + 0.256 b^4 + 0.93 b^8) (1 - (p2/p1)^(1/k))
//
// Source: SourceOrifice.
func (o Orifice) Expansibility(inletPa, outletPa, exponent float64) (float64, error) {
	b, err := o.beta()
	if err != nil {
		return 0, err
	}
	if err := within.Range("inlet pressure", inletPa, 1e3, 1e8, "Pa"); err != nil {
		return 0, err
	}
	if err := within.Range("outlet over inlet pressure", outletPa/inletPa, 0.75, 1, ""); err != nil {
		return 0, err
	}
	if err := within.Range("isentropic exponent", exponent, 1.05, 1.7, ""); err != nil {
		return 0, err
	}
	b4 := math.Pow(b, 4)
	return 1 - (0.351+0.256*b4+0.93*b4*b4)*(1-math.Pow(outletPa/inletPa, 1/exponent)), nil
}

// FreeOrifice is the flow in m3/h through a hole of a diameter of 1e-4 to 1 m
// between two large rooms, at a drop of 0 to 1e7 Pa, a density of 0.05 to 2000
// kg/m3 and a discharge coefficient of 0.3 to 1. Nothing is compressed, so a gas
// must lose little of its pressure.
//
//	Q = 3600 C pi/4 d^2 sqrt(2 dp/rho)
//
// Source: SourceFreeOrifice.
func FreeOrifice(hole, dropPa, density, coefficient float64) (float64, error) {
	if err := within.Range("hole", hole, 1e-4, 1, "m"); err != nil {
		return 0, err
	}
	if err := within.Range("pressure drop", dropPa, 0, 1e7, "Pa"); err != nil {
		return 0, err
	}
	if err := within.Range("density", density, 0.05, 2000, "kg/m3"); err != nil {
		return 0, err
	}
	if err := within.Range("discharge coefficient", coefficient, 0.3, 1, ""); err != nil {
		return 0, err
	}
	return 3600 * coefficient * math.Pi / 4 * hole * hole * math.Sqrt(2*dropPa/density), nil
}

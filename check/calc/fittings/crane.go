package fittings

import (
	"math"

	"example.org/tundish/check/calc/within"
)

// Turbulent is Crane's fT, the friction factor at complete turbulence in
// commercial steel pipe of a bore in m. It scales Crane's coefficients whatever
// the pipe is made of; it is not the friction factor of a pipe.
//
//	f by Colebrook at Re = 7.5e6 D and eps/D = 3.4126825e-5 D^-1.0112
//
// Bores from 0.005 to 2 m; the printed table goes from 1/2 to 24 in. Sources:
// SourceCraneTurbulent, SourceClamond.
func Turbulent(bore float64) (float64, error) {
	if err := checkBore(bore); err != nil {
		return 0, err
	}
	return turbulent(bore), nil
}

func turbulent(bore float64) float64 {
	const ln10 = math.Ln10
	reynolds := 7.5e6 * bore
	roughness := 3.4126825352925e-5 * math.Pow(bore, -1.0112)
	// Clamond writes Colebrook as F + ln(x + F) = y with F = (ln 10/2)/sqrt f.
	x := roughness * reynolds * ln10 / 18.574
	f := math.Log(reynolds) + math.Log(ln10/5.02) - 0.2
	s := x + f
	e := (math.Log(s) - 0.2) / (1 + s)
	f -= (1 + s + 0.5*e) * e * s / (1 + s + e*(1+e/3))
	return ln10 * ln10 / 4 / (f * f)
}

// Valve is a kind of valve in Crane's paper, open and with a seat as wide as
// the pipe.
type Valve uint8

// The kinds of valves.
const (
	Gate            Valve = iota + 1
	Globe                 // straight
	AngleGlobe            // disc guided, full travel
	AngleWing             // wing guided
	Ball                  // full bore
	Plug                  // straight way
	PlugThreeWayRun       // three way, straight through
	PlugThreeWayBranch
	Diaphragm         // weir type
	DiaphragmStraight // straight through
	SwingCheck        // clapper at right angles to the flow
	SwingCheckTilted  // clapper seat at an angle
	LiftCheck         // globe body
	LiftCheckAngle    // angle body
	FootPoppet        // foot valve with strainer, poppet disc
	FootHinged        // foot valve with strainer, hinged disc
)

var valveMultiples = [...]float64{
	Gate: 8, Globe: 340, AngleGlobe: 55, AngleWing: 150, Ball: 3, Plug: 18,
	PlugThreeWayRun: 30, PlugThreeWayBranch: 90, Diaphragm: 149, DiaphragmStraight: 39,
	SwingCheck: 50, SwingCheckTilted: 100, LiftCheck: 600, LiftCheckAngle: 55,
	FootPoppet: 420, FootHinged: 75,
}

// CraneValve is K of an open valve in a pipe of a bore in m, on the pipe's
// velocity.
//
//	K = n fT
//
// Source: SourceCrane.
func CraneValve(v Valve, bore float64) (float64, error) {
	if err := checkBore(bore); err != nil {
		return 0, err
	}
	if v < Gate || int(v) >= len(valveMultiples) {
		return 0, &within.Error{Name: "kind of valve", Value: float64(v), Low: float64(Gate), High: float64(FootHinged)}
	}
	return valveMultiples[v] * turbulent(bore), nil
}

// CraneButterfly is K of a centric butterfly valve of a bore in m, 2 to 24 in.
//
//	K = n fT,  n = 45 to 8 in, 35 to 14 in, 25 to 24 in
//
// Source: SourceCrane.
func CraneButterfly(bore float64) (float64, error) {
	if err := within.Range("bore", bore, 0.045, 0.62, "m"); err != nil {
		return 0, err
	}
	n := 25.0
	if bore < 0.23 {
		n = 45
	} else if bore < 0.38 {
		n = 35
	}
	return n * turbulent(bore), nil
}

// CraneReducedValve is K of a gate or ball valve whose seat is narrower than
// the pipe, on the pipe's velocity. The taper is the whole angle of the reducing
// part, 0 to 180 degrees; seat over bore from 0.2 to 1.
//
//	K = [n fT + sin(a/2) (0.8 (1-b^2) + 2.6 (1-b^2)^2)]/b^4    to 45 degrees
//	K = [n fT + 0.5 sqrt(sin(a/2)) (1-b^2) + (1-b^2)^2]/b^4    above
//
// Source: SourceCrane.
func CraneReducedValve(v Valve, seat, bore, taper float64) (float64, error) {
	if v != Gate && v != Ball {
		return 0, &within.Error{Name: "kind of valve", Value: float64(v), Low: float64(Gate), High: float64(Ball)}
	}
	if err := checkBore(bore); err != nil {
		return 0, err
	}
	beta := seat / bore
	if err := within.Range("seat over bore", beta, 0.2, 1, ""); err != nil {
		return 0, err
	}
	if err := within.Range("taper", taper, 0, 180, "deg"); err != nil {
		return 0, err
	}
	b2 := beta * beta
	half := math.Sin(taper * math.Pi / 360)
	k := valveMultiples[v] * turbulent(bore)
	if taper <= 45 {
		k += half * (0.8*(1-b2) + 2.6*(1-b2)*(1-b2))
	} else {
		k += 0.5*math.Sqrt(half)*(1-b2) + (1-b2)*(1-b2)
	}
	return k / (b2 * b2), nil
}

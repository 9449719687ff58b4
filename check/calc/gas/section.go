// Package gas computes gas pipes: fuels and gas rates, the pressure lost in a
// section, meters, the volume, test and purge of an installation, and the US
// sizing methods. It knows nothing of the plant language.
//
// Units are SI, pressures in Pa gauge where a field says so, gas volumes at
// 15 degC and 1013.25 mbar dry; the US equations and tables keep their own
// units, named in every argument. A pass of any of these sums is no permission
// to let gas into a pipe.
package gas

import (
	"errors"
	"math"

	"example.org/tundish/check/calc/within"
)

// Section is a length of gas pipe of one bore that carries one flow.
type Section struct {
	RelativeDensity float64 // of the gas to air, 0.05 to 3
	Viscosity       float64 // dynamic, Pa.s, 1e-6 to 1e-4
	Bore            float64 // inner diameter, m, 0.001 to 2
	Roughness       float64 // m, 0 to 0.05 of the bore
	Length          float64 // m, 0 to 100 km
	Equivalent      float64 // length of pipe that loses what the fittings lose, m
	Loss            float64 // sum of loss coefficients on the velocity head of the pipe
	Inlet           float64 // pressure at the inlet, Pa gauge, -0.5 to 10 bar
	Flow            float64 // m3/s at 15 degC and 1013.25 mbar, 0 or more
}

// Drop is what a section does to its flow.
type Drop struct {
	Pressure       float64 // lost from inlet to outlet by friction and fittings, Pa
	Outlet         float64 // pressure at the outlet, Pa gauge, without height gain
	Velocity       float64 // at the inlet, m/s
	OutletVelocity float64 // m/s, the greatest in the section
	Reynolds       float64
	Factor         float64 // Darcy friction factor; 0 without flow
}

// ErrChoked is returned when no outlet pressure lets the flow through: the
// pipe is choked.
var ErrChoked = errors.New("the pipe cannot pass this flow at this inlet pressure: the gas would reach the speed of sound")

const (
	mostLength = 1e5 // m
	leastBore  = 0.001
	mostBore   = 2
	mostLoss   = 1e4
)

func (s *Section) check() error {
	if err := checkGas(s.RelativeDensity, s.Inlet); err != nil {
		return err
	}
	if err := within.Range("viscosity", s.Viscosity, 1e-6, 1e-4, "Pa.s"); err != nil {
		return err
	}
	if err := within.Range("bore", s.Bore, leastBore, mostBore, "m"); err != nil {
		return err
	}
	if err := within.Range("roughness", s.Roughness, 0, 0.05*s.Bore, "m"); err != nil {
		return err
	}
	if err := within.Range("length", s.Length, 0, mostLength, "m"); err != nil {
		return err
	}
	if err := within.Range("equivalent length", s.Equivalent, 0, mostLength, "m"); err != nil {
		return err
	}
	if err := within.Range("loss coefficient", s.Loss, 0, mostLoss, ""); err != nil {
		return err
	}
	return within.Range("flow", s.Flow, 0, 1e3, "m3/s")
}

// Drop is the loss of the section at its flow.
//
//	p1^2 - p2^2 = (R T/M) (m/A)^2 [ f L/D + K + 2 ln(p1/p2) ]
//	m = Q d rho_air,  v1 = m/(rho1 A),  Re = 4 m/(pi D mu)
//
// with f = 64/Re up to Re 2000 and Colebrook's factor above; between 2000 and
// 4000 no law is sure and the greater one is taken. L counts the equivalent
// length of the fittings, K their loss coefficients. Gas at 15 degC, ideal,
// isothermal; height is not in it, see HeightGain. A flow that the pipe cannot
// pass is ErrChoked. Source: SourceIsothermal.
func (s *Section) Drop() (Drop, error) {
	if err := s.check(); err != nil {
		return Drop{}, err
	}
	return s.drop()
}

func (s *Section) drop() (Drop, error) {
	if s.Flow == 0 {
		return Drop{Outlet: s.Inlet}, nil
	}
	area := math.Pi / 4 * s.Bore * s.Bore
	flux := s.Flow * s.RelativeDensity * AirDensity / area // kg/(s.m2)
	perMass := gasConstant * Temperature / (s.RelativeDensity * airMolarMass)
	p1 := Atmosphere + s.Inlet
	d := Drop{
		Velocity: flux * perMass / p1,
		Reynolds: flux * s.Bore / s.Viscosity,
	}
	d.Factor = darcy(d.Reynolds, s.Roughness/s.Bore)
	p2, err := outlet(p1, perMass*flux*flux, d.Factor*(s.Length+s.Equivalent)/s.Bore+s.Loss)
	if err != nil {
		return Drop{}, err
	}
	d.Pressure = p1 - p2
	d.Outlet = p2 - Atmosphere
	d.OutletVelocity = flux * perMass / p2
	return d, nil
}

// outlet solves p1^2 - p^2 = a (k + 2 ln(p1/p)) for the subsonic p. The
// function p^2 - 2 a ln p is convex and rises above p = sqrt a, so Newton steps
// from p1 come down to the root and never pass it; a step that leaves that
// branch shows that there is no root.
func outlet(p1, a, k float64) (float64, error) {
	if p1*p1 <= a {
		return 0, ErrChoked
	}
	p := p1
	for range 60 {
		slope := 2 * (p - a/p)
		// The difference of squares is written as a product for its digits.
		step := ((p1-p)*(p1+p) - a*(k+2*math.Log(p1/p))) / slope
		p += step
		if p <= 0 || !(p*p > a) {
			return 0, ErrChoked
		}
		if math.Abs(step) <= 1e-15*p1 {
			return p, nil
		}
	}
	if slope := p - a/p; slope < 1e-3*p { // crawling at the edge of choking
		return 0, ErrChoked
	}
	return p, nil
}

// Capacity is the greatest flow in m3/s that loses no more than allowed Pa in
// the section; the section's own flow is not read. Allowed holds from 0.01 Pa
// to a quarter of the absolute inlet pressure. Source: SourceIsothermal.
func (s *Section) Capacity(allowed float64) (float64, error) {
	try := *s
	try.Flow = 0
	if err := try.check(); err != nil {
		return 0, err
	}
	if err := within.Range("allowed loss", allowed, 0.01, (Atmosphere+s.Inlet)/4, "Pa"); err != nil {
		return 0, err
	}
	if s.Length+s.Equivalent == 0 && s.Loss == 0 {
		return 0, within.Range("length", 0, math.SmallestNonzeroFloat64, mostLength, "m")
	}
	fits := func(flow float64) bool {
		try.Flow = flow
		d, err := try.drop()
		return err == nil && d.Pressure <= allowed
	}
	// Loss rises with flow, with one step up at Re 2000, so halving is safe.
	area := math.Pi / 4 * s.Bore * s.Bore
	low, high := 0.0, 400*area // 400 m/s is near the speed of sound
	for fits(high) {
		low, high = high, 2*high
		if high > 1e6*area {
			return 0, ErrChoked
		}
	}
	for range 200 {
		middle := (low + high) / 2
		if high-low <= 1e-12*high || middle == low || middle == high {
			break
		}
		if fits(middle) {
			low = middle
		} else {
			high = middle
		}
	}
	return low, nil
}

// Gradient is the loss in Pa per meter that a run may have.
//
//	gradient = allowed / (L (1 + fittings))
//
// Allowed in Pa above 0, the run in m above 0, the share of the fittings from
// 0 to 2. Source: SourceGradient.
func Gradient(allowed, run, fittings float64) (float64, error) {
	if err := within.Range("allowed loss", allowed, 1e-3, 1e6, "Pa"); err != nil {
		return 0, err
	}
	if err := within.Range("length of run", run, 1e-3, mostLength, "m"); err != nil {
		return 0, err
	}
	if err := within.Range("share of the fittings", fittings, 0, 2, ""); err != nil {
		return 0, err
	}
	return allowed / (run * (1 + fittings)), nil
}

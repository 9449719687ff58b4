// Package water computes liquid water: density, specific heat, enthalpy and
// viscosity by the IAPWS formulations. It knows nothing of plants.
//
// Temperatures are in degC, pressures in Pa absolute.
package water

import (
	"math"

	"example.org/tundish/check/calc/within"
	"example.org/tundish/check/cite"
)

// Sources of the formulas of this package.
var (
	SourceIF97 = cite.Source{
		Work: "IAPWS-IF97", Edition: "R7-97(2012)", Clause: "region 1", Read: cite.Memory,
		Note: "coefficients from memory; they reproduce the reference table of an independent library within 1e-6",
	}
	SourceViscosity = cite.Source{
		Work: "IAPWS R12-08", Edition: "2008", Clause: "equations 11 and 12", Read: cite.Memory,
		Note: "coefficients from memory; they reproduce the reference table of an independent library within 1e-6",
	}
)

const (
	gasConstant   = 461.526 // J/(kg.K)
	ratedPressure = 16.53e6 // Pa
	ratedTemp     = 1386.0  // K
	zeroCelsius   = 273.15
)

// term is one term n (7.1 - pi)^i (tau - 1.222)^j of the Gibbs function.
type term struct {
	i, j int
	n    float64
}

var terms = [34]term{
	{0, -2, 0.14632971213167},
	{0, -1, -0.84548187169114},
	{0, 0, -3.7563603672040},
	{0, 1, 3.3855169168385},
	{0, 2, -0.95791963387872},
	{0, 3, 0.15772038513228},
	{0, 4, -0.016616417199501},
	{0, 5, 0.81214629983568e-3},
	{1, -9, 0.28319080123804e-3},
	{1, -7, -0.60706301565874e-3},
	{1, -1, -0.018990068218419},
	{1, 0, -0.032529748770505},
	{1, 1, -0.021841717175414},
	{1, 3, -0.52838357969930e-4},
	{2, -3, -0.47184321073267e-3},
	{2, 0, -0.30001780793026e-3},
	{2, 1, 0.47661393906987e-4},
	{2, 3, -0.44141845330846e-5},
	{2, 17, -0.72694996297594e-15},
	{3, -4, -0.31679644845054e-4},
	{3, 0, -0.28270797985312e-5},
	{3, 6, -0.85205128120103e-9},
	{4, -5, -0.22425281908000e-5},
	{4, -2, -0.65171222895601e-6},
	{4, 10, -0.14341729937924e-12},
	{5, -8, -0.40516996860117e-6},
	{8, -11, -0.12734301741641e-8},
	{8, -6, -0.17424871230634e-9},
	{21, -29, -0.68762131295531e-18},
	{23, -31, 0.14478307828521e-19},
	{29, -38, 0.26335781662795e-22},
	{30, -39, -0.11947622640071e-22},
	{31, -40, 0.18228094581404e-23},
	{32, -41, -0.93537087292458e-25},
}

// State is liquid water at one temperature and pressure.
type State struct {
	Density      float64 // kg/m3
	SpecificHeat float64 // J/(kg.K), at constant pressure
	Enthalpy     float64 // J/kg, 0 for liquid at the triple point
	Viscosity    float64 // dynamic, Pa.s
}

// At gives the properties of liquid water from 0 to 200 degC and from the
// saturation pressure, which is not checked here, to 100 bar.
//
//	v = (R T/p) pi gamma_pi,  h = R T tau gamma_tau,  cp = -R tau^2 gamma_tautau
//
// with gamma = sum n (7.1 - pi)^I (tau - 1.222)^J, pi = p/16.53 MPa,
// tau = 1386 K/T. Sources: SourceIF97, SourceViscosity.
func At(celsius, pressure float64) (State, error) {
	if err := within.Range("water temperature", celsius, 0, 200, "degC"); err != nil {
		return State{}, err
	}
	if err := within.Range("absolute water pressure", pressure, 500, 100e5, "Pa"); err != nil {
		return State{}, err
	}
	t := celsius + zeroCelsius
	pi, tau := pressure/ratedPressure, ratedTemp/t
	// Powers by tables of repeated multiplication: no math.Pow in the loop.
	a, b := 7.1-pi, tau-1.222
	var ap [33]float64
	ap[0] = 1
	for k := 1; k < len(ap); k++ {
		ap[k] = ap[k-1] * a
	}
	var bp [60]float64 // exponents -42 to 17 at index exponent+42
	bp[42] = 1
	for k := 43; k < len(bp); k++ {
		bp[k] = bp[k-1] * b
	}
	inv := 1 / b
	for k := 41; k >= 0; k-- {
		bp[k] = bp[k+1] * inv
	}
	var gp, gt, gtt float64
	for k := range terms {
		e := &terms[k]
		i, j := float64(e.i), float64(e.j)
		if e.i > 0 {
			gp -= e.n * i * ap[e.i-1] * bp[e.j+42]
		}
		d := e.n * ap[e.i] * j * bp[e.j+41]
		gt += d
		if e.j != 0 && e.j > -41 {
			gtt += e.n * ap[e.i] * j * (j - 1) * bp[e.j+40]
		} else if e.j == -41 {
			gtt += e.n * ap[e.i] * j * (j - 1) * bp[0] * inv
		}
	}
	s := State{
		Density:      pressure / (gasConstant * t * pi * gp),
		SpecificHeat: -gasConstant * tau * tau * gtt,
		Enthalpy:     gasConstant * t * tau * gt,
	}
	s.Viscosity = viscosity(t, s.Density)
	return s, nil
}

// Density is the density of liquid water in kg/m3; see At.
func Density(celsius, pressure float64) (float64, error) {
	s, err := At(celsius, pressure)
	return s.Density, err
}

// coefficients H_ij of the viscosity, i over temperature, j over density.
var hij = [6][7]float64{
	{0.520094, 0.222531, -0.281378, 0.161913, -0.0325372, 0, 0},
	{0.0850895, 0.999115, -0.906851, 0.257399, 0, 0, 0},
	{-1.08374, 1.88797, -0.772479, 0, 0, 0, 0},
	{-0.289555, 1.26613, -0.489837, 0, 0.0698452, 0, -0.00435673},
	{0, 0, -0.257040, 0, 0, 0.00872102, 0},
	{0, 0.120573, 0, 0, 0, 0, -0.000593264},
}

// viscosity in Pa.s from temperature in K and density in kg/m3, without the
// critical enhancement, which is nothing far from the critical point.
//
//	mu = 100 sqrt(T) / sum H_i/T^i x exp(rho sum (1/T-1)^i sum H_ij (rho-1)^j), in uPa.s
//
// with T over 647.096 K and rho over 322 kg/m3. Source: SourceViscosity.
func viscosity(t, density float64) float64 {
	tb, rb := t/647.096, density/322
	it := 1 / tb
	mu0 := 100 * math.Sqrt(tb) / (1.67752 + it*(2.20462+it*(0.6366564-it*0.241605)))
	sum, ti := 0.0, 1.0
	for i := range hij {
		row, rj := 0.0, 1.0
		for j := range hij[i] {
			row += hij[i][j] * rj
			rj *= rb - 1
		}
		sum += ti * row
		ti *= it - 1
	}
	return mu0 * math.Exp(rb*sum) * 1e-6
}

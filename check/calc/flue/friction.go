package flue

import (
	"math"

	"example.org/tundish/check/calc/friction"
	"example.org/tundish/check/calc/within"
)

// Stream is flue gas, taken as air, in a round pipe.
type Stream struct {
	Bore        float64 // m, 0.02 to 3
	Roughness   float64 // m, 0 to 0.05 of the bore
	Temperature float64 // degC, -60 to 600
	Pressure    float64 // Pa absolute, 40 to 120 kPa
	MassFlow    float64 // kg/s, 0 to 100
}

// Flow is what a stream does in its pipe.
type Flow struct {
	Density  float64 // kg/m3
	Velocity float64 // m/s
	Reynolds float64
	Factor   float64 // Darcy friction factor, 0 without flow
	Dynamic  float64 // rho v^2/2, Pa
	Gradient float64 // friction, Pa/m
}

// Flow computes velocity and friction.
//
//	v = m/(rho A),  gradient = f/D rho v^2/2
//
// with f = 64/Re up to Re 2000 and Colebrook's factor above; between 2000 and
// 4000 no law is sure and the greater one is taken. Sources: SourceFriction,
// SourceViscosity, SourceIdealGas.
func (s *Stream) Flow() (Flow, error) {
	if err := checkBore(s.Bore, s.Roughness); err != nil {
		return Flow{}, err
	}
	if err := checkFlue(s.Temperature); err != nil {
		return Flow{}, err
	}
	if err := checkPressure(s.Pressure); err != nil {
		return Flow{}, err
	}
	if err := within.Range("mass flow", s.MassFlow, 0, 100, "kg/s"); err != nil {
		return Flow{}, err
	}
	return flow(s.MassFlow, s.Bore, s.Roughness, s.Temperature, density(s.Pressure, s.Temperature, AirGasConstant)), nil
}

func checkBore(bore, roughness float64) error {
	if err := within.Range("bore", bore, 0.02, 3, "m"); err != nil {
		return err
	}
	return within.Range("roughness", roughness, 0, 0.05*bore, "m")
}

// flow is Flow without its checks.
func flow(mass, bore, roughness, celsius, rho float64) Flow {
	if mass == 0 {
		return Flow{Density: rho}
	}
	f := Flow{
		Density:  rho,
		Velocity: mass / (rho * math.Pi / 4 * bore * bore),
		Reynolds: 4 * mass / (math.Pi * bore * viscosity(celsius)),
	}
	f.Factor = darcy(f.Reynolds, roughness/bore)
	f.Dynamic = rho * f.Velocity * f.Velocity / 2
	f.Gradient = f.Factor / bore * f.Dynamic
	return f
}

// darcy is the Darcy friction factor: 64/Re up to Re 2000, Colebrook above.
func darcy(re, rough float64) float64 {
	if re <= 2000 {
		return 64 / re
	}
	return friction.Colebrook(re, rough)
}

// BoreFor is the bore in m at which a mass flow in kg/s of a density in kg/m3
// runs at a velocity in m/s.
//
//	D = sqrt(4 m / (pi rho w))
//
// Source: SourceGeometry.
func BoreFor(mass, rho, velocity float64) (float64, error) {
	if err := within.Range("mass flow", mass, 0, 100, "kg/s"); err != nil {
		return 0, err
	}
	if err := within.Range("density", rho, 0.2, 3, "kg/m3"); err != nil {
		return 0, err
	}
	if err := within.Range("velocity", velocity, 0.1, 50, "m/s"); err != nil {
		return 0, err
	}
	return math.Sqrt(4 * mass / (math.Pi * rho * velocity)), nil
}

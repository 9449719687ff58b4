package flue

import (
	"math"

	"example.org/tundish/check/calc/within"
)

const (
	gravity      = 9.80665     // m/s2, standard, a definition
	gasConstant  = 8.314462618 // J/(mol.K); source: SourceIdealGas
	airMolarMass = 28.9647e-3  // kg/mol; source: SourceAtmosphere
	kelvin       = 273.15

	// AirGasConstant is the gas constant of dry air in J/(kg.K).
	AirGasConstant = gasConstant / airMolarMass

	coldestAir  = -60.0
	hottestAir  = 60.0
	hottestFlue = 600.0
)

func checkOutside(celsius float64) error {
	return within.Range("outside temperature", celsius, coldestAir, hottestAir, "degC")
}

func checkFlue(celsius float64) error {
	return within.Range("flue gas temperature", celsius, coldestAir, hottestFlue, "degC")
}

func checkPressure(pascal float64) error {
	return within.Range("pressure", pascal, 4e4, 1.2e5, "Pa")
}

// Pressure is the air pressure in Pa at an altitude in m, -500 to 5000.
//
//	p = 101325 (1 - 0.0065 H/288.15)^5.25588
//
// with the altitude H as geopotential height. Source: SourceAtmosphere.
func Pressure(altitude float64) (float64, error) {
	if err := within.Range("altitude", altitude, -500, 5000, "m"); err != nil {
		return 0, err
	}
	const earth = 6356766.0 // m, radius of the work
	h := earth * altitude / (earth + altitude)
	return 101325 * math.Pow(1-0.0065*h/288.15, 34.163195e-3/0.0065), nil
}

// density is p/(R T) for a gas constant in J/(kg.K).
func density(pressure, celsius, r float64) float64 {
	return pressure / (r * (celsius + kelvin))
}

// AirDensity is the density in kg/m3 of dry air at a pressure in Pa (40 to 120
// kPa) and a temperature in degC (-60 to 600).
//
//	rho = p M / (R T)
//
// Source: SourceIdealGas.
func AirDensity(pressure, celsius float64) (float64, error) {
	if err := checkPressure(pressure); err != nil {
		return 0, err
	}
	if err := checkFlue(celsius); err != nil {
		return 0, err
	}
	return density(pressure, celsius, AirGasConstant), nil
}

// viscosity is the dynamic viscosity in Pa.s of air. Source: SourceViscosity.
func viscosity(celsius float64) float64 {
	t := celsius + kelvin
	return 1.458e-6 * t * math.Sqrt(t) / (t + 110.4)
}

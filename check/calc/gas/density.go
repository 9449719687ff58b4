package gas

import "example.org/tundish/check/calc/within"

// Conditions and constants of every gas volume in this package.
const (
	Temperature  = 288.15                                                  // K, 15 degC
	Atmosphere   = 101325.0                                                // Pa
	AirDensity   = airMolarMass * Atmosphere / (gasConstant * Temperature) // 1.22499 kg/m3; sources: SourceAir, SourceIdealGas
	gasConstant  = 8.314462618                                             // J/(mol.K); source: SourceIdealGas
	airMolarMass = 28.9647e-3                                              // kg/mol; source: SourceAir
	gravity      = 9.80665                                                 // m/s2, standard, a definition
	mostGauge    = 10e5                                                    // Pa; above it the ideal gas law is no longer good to 2 %
	leastGauge   = -Atmosphere / 2                                         // Pa
)

func checkGas(relativeDensity, gauge float64) error {
	if err := within.Range("relative density", relativeDensity, 0.05, 3, ""); err != nil {
		return err
	}
	return within.Range("gauge pressure", gauge, leastGauge, mostGauge, "Pa")
}

// Density is the density in kg/m3 of a gas at 15 degC and a gauge pressure in
// Pa over 1013.25 mbar.
//
//	rho = d M_air p / (R T)
//
// The relative density holds from 0.05 to 3, the pressure from -0.5 to 10 bar.
// Source: SourceIdealGas.
func Density(relativeDensity, gauge float64) (float64, error) {
	if err := checkGas(relativeDensity, gauge); err != nil {
		return 0, err
	}
	return relativeDensity * airMolarMass * (Atmosphere + gauge) / (gasConstant * Temperature), nil
}

// HeightGain is the pressure in Pa that a gas gains on a rise of so many
// meters at a gauge pressure in Pa; heavy gases lose. A fall is a negative rise.
//
//	gain = g H (rho_air - rho_gas)
//
// The rise holds from -200 to 200 m. Source: SourceHydrostatic.
func HeightGain(relativeDensity, gauge, rise float64) (float64, error) {
	if err := within.Range("rise", rise, -200, 200, "m"); err != nil {
		return 0, err
	}
	rho, err := Density(relativeDensity, gauge)
	if err != nil {
		return 0, err
	}
	return gravity * rise * (AirDensity - rho), nil
}

// Package combustion computes what leaves a gas flame: mass and volume of the
// flue gas, its oxygen and water, dew point, condensate and losses, from the
// CO2 measured in dry flue gas. It knows nothing of the plant language.
//
// Units are SI, temperatures in degC, CO2 and O2 in per cent of dry flue gas as
// analyzers show them.
package combustion

import (
	"example.org/tundish/check/calc/within"
)

// Fuel is one mole of a gaseous fuel and what it burns to.
type Fuel struct {
	Name      string
	Carbon    float64 // mol CO2 from a mole
	Water     float64 // mol H2O from a mole
	Oxygen    float64 // mol O2 that a mole needs
	Inert     float64 // mol N2 that a mole brings along
	MolarMass float64 // kg/mol
	Net       float64 // J/mol
	Gross     float64 // J/mol
}

const (
	gasConstant  = 8.314462618 // J/(mol.K)
	airMolarMass = 28.9647e-3  // kg/mol
	waterMass    = 18.01528e-3 // kg/mol
	oxygenShare  = 0.2095      // of dry air
	oxygenPer    = 100 * oxygenShare
)

// The fuels. Molar heats at 15 degC. Source: SourceStoichiometry.
var (
	Methane = Fuel{
		Name: "methane", Carbon: 1, Water: 2, Oxygen: 2, MolarMass: 16.0425e-3,
		Gross: 891.51e3, Net: 891.51e3 - 2*44.41e3,
	}
	Propane = Fuel{
		Name: "propane", Carbon: 3, Water: 4, Oxygen: 5, MolarMass: 44.0956e-3,
		Gross: 2221.1e3, Net: 2221.1e3 - 4*44.41e3,
	}
)

func (f *Fuel) stoichiometricAir() float64 { return f.Oxygen / oxygenShare }

func (f *Fuel) leastDry() float64 {
	return f.Carbon + f.Inert + f.stoichiometricAir() - f.Oxygen
}

// MostCO2 is the CO2 in per cent of dry flue gas without excess air: 11.70 for
// methane, 13.72 for propane.
//
//	CO2max = 100 C / (C + I + O (1-0.2095)/0.2095)
//
// Source: SourceStoichiometry.
func (f *Fuel) MostCO2() float64 { return 100 * f.Carbon / f.leastDry() }

// Products is what one mole of fuel burns to, complete, with its air.
type Products struct {
	CO2, O2, N2, Water float64 // mol; N2 with the argon of the air
	Dry                float64 // mol of dry flue gas
	Air                float64 // mol of dry air
	Vapor              float64 // mol of water vapor that the air brought, part of Water
	AirRatio           float64 // air to the least air
	Mass               float64 // kg of wet flue gas
	Net, Gross         float64 // heat of the mole of fuel, J
}

const leastCO2 = 1.0 // per cent; below it a burner is not firing

// Burn gives the products of a fuel from the CO2 in per cent of dry flue gas,
// 1 to the most the fuel can have, and the water vapor of the air in mol per
// mol of dry air, 0 to 0.2 (0: dry air).
//
//	dry flue gas = 100 C / CO2;  air = least air + dry - least dry
//
// Source: SourceStoichiometry.
func Burn(f *Fuel, co2Percent, vapor float64) (Products, error) {
	// A CO2 at the most is read from rounded figures: 1e-6 of play.
	most := f.MostCO2()
	if err := within.Range("CO2 in dry flue gas", co2Percent, leastCO2, most*(1+1e-6), "%"); err != nil {
		return Products{}, err
	}
	if err := within.Range("water vapor of the air", vapor, 0, 0.2, "mol/mol"); err != nil {
		return Products{}, err
	}
	dry := max(100*f.Carbon/co2Percent, f.leastDry())
	excess := dry - f.leastDry()
	air := f.stoichiometricAir() + excess
	return Products{
		CO2: f.Carbon, O2: excess * oxygenShare, N2: dry - f.Carbon - excess*oxygenShare,
		Water: f.Water + vapor*air, Dry: dry, Air: air, Vapor: vapor * air,
		AirRatio: air / f.stoichiometricAir(),
		Mass:     f.MolarMass + air*(airMolarMass+vapor*waterMass),
		Net:      f.Net, Gross: f.Gross,
	}, nil
}

// O2 is the oxygen in per cent of dry flue gas that belongs to a CO2; the CO2
// holds from 0 to the most of the fuel.
//
//	O2 = 20.95 (1 - CO2/CO2max)
//
// Source: SourceOxygen.
func O2(f *Fuel, co2Percent float64) (float64, error) {
	most := f.MostCO2()
	if err := within.Range("CO2 in dry flue gas", co2Percent, 0, most*(1+1e-6), "%"); err != nil {
		return 0, err
	}
	return oxygenPer * max(0, 1-co2Percent/most), nil
}

// VaporOfAir is the water vapor in mol per mol of dry air at a temperature
// from 0 to 60 degC, a relative humidity from 0 to 1 and a pressure in Pa from
// 50 to 110 kPa.
//
//	x = phi psat / (p - phi psat)
//
// Source: SourceSaturation.
func VaporOfAir(celsius, humidity, pressure float64) (float64, error) {
	if err := within.Range("air temperature", celsius, 0, 60, "degC"); err != nil {
		return 0, err
	}
	if err := within.Range("relative humidity", humidity, 0, 1, ""); err != nil {
		return 0, err
	}
	if err := checkPressure(pressure); err != nil {
		return 0, err
	}
	p := humidity * saturationPressure(celsius)
	return p / (pressure - p), nil
}

func checkPressure(pressure float64) error {
	return within.Range("pressure of the flue gas", pressure, 5e4, 1.1e5, "Pa")
}

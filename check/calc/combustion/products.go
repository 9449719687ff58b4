package combustion

import (
	"math"

	"example.org/tundish/check/calc/within"
)

// MassPerHeat is the mass of flue gas in kg per joule of net heat input; times
// the heat input in W it is the mass flow in kg/s. Source:
// SourceStoichiometry.
func (p *Products) MassPerHeat() float64 { return p.Mass / p.Net }

// MolarMass is that of the wet flue gas in kg/mol.
func (p *Products) MolarMass() float64 { return p.Mass / (p.Dry + p.Water) }

// GasConstant is that of the wet flue gas in J/(kg.K).
func (p *Products) GasConstant() float64 { return gasConstant / p.MolarMass() }

// WaterFraction is the share of water vapor in the wet flue gas by volume;
// with methane and dry air 1/(1 + 50/CO2%).
func (p *Products) WaterFraction() float64 { return p.Water / (p.Dry + p.Water) }

// DewPoint is the temperature in degC at which water begins to condense from
// the flue gas at a pressure in Pa, 50 to 110 kPa.
//
//	t = Tsat(x p)
//
// Source: SourceDewPoint.
func (p *Products) DewPoint(pressure float64) (float64, error) {
	if err := checkPressure(pressure); err != nil {
		return 0, err
	}
	return SaturationTemperature(p.WaterFraction() * pressure)
}

// MostCondensate is all the water of the flue gas in kg per joule of net heat
// input, on which drains are sized: 0.1616 kg/kWh for methane with dry air.
// Source: SourceCondensate.
func (p *Products) MostCondensate() float64 { return p.Water * waterMass / p.Net }

// Condensate is the water in kg per joule of net heat input that condenses
// when the flue gas leaves the unit saturated at a temperature in degC, 0 to
// 90, and a pressure in Pa; 0 at the dew point and above it. With a heat
// exchanger the temperature is that of the return water and the approach.
//
//	w = (water - dry psat/(p - psat)) M / Net
//
// Source: SourceCondensate.
func (p *Products) Condensate(celsius, pressure float64) (float64, error) {
	if err := within.Range("flue gas temperature", celsius, 0, 90, "degC"); err != nil {
		return 0, err
	}
	if err := checkPressure(pressure); err != nil {
		return 0, err
	}
	psat := saturationPressure(celsius)
	if psat >= pressure {
		return 0, nil // boiling: nothing condenses at this altitude
	}
	return math.Max(0, p.Water-p.Dry*psat/(pressure-psat)) * waterMass / p.Net, nil
}

// AirVolume is the volume of the combustion air in m3 per joule of net heat
// input at a temperature in degC, -40 to 60, and a pressure in Pa. Methane
// with 9 % CO2 needs 1.31 m3/h per kW at 20 degC. Source: SourceStoichiometry.
func (p *Products) AirVolume(celsius, pressure float64) (float64, error) {
	if err := within.Range("air temperature", celsius, -40, 60, "degC"); err != nil {
		return 0, err
	}
	if err := checkPressure(pressure); err != nil {
		return 0, err
	}
	return (p.Air + p.Vapor) * gasConstant * (celsius + 273.15) / pressure / p.Net, nil
}

// HeatCapacity is the heat capacity in J/(kg.K) of the wet flue gas at a
// temperature from 0 to 200 degC, without condensation.
//
//	cp = sum n_i c_i(t) / m
//
// Source: SourceHeatCapacity.
func (p *Products) HeatCapacity(celsius float64) (float64, error) {
	if err := within.Range("flue gas temperature", celsius, 0, 200, "degC"); err != nil {
		return 0, err
	}
	t := celsius
	// J/(mol.K) of each gas.
	sum := p.CO2*(36.2+0.038*t) + p.O2*(29.2+0.008*t) + p.N2*(29.08+0.002*t) + p.Water*(33.45+0.007*t)
	return sum / p.Mass, nil
}

// StandardMassFlow is the mass flow of flue gas in kg/s of natural gas by the
// factors of the flue standard, a check on MassPerHeat.
//
//	m [g/s] = (3.72/CO2% + 0.053) x QF [kW net]
//
// CO2 from 1 to 12 %, the net heat input from 0 to 100 MW. Source:
// SourceStandardMass.
func StandardMassFlow(co2Percent, netWatts float64) (float64, error) {
	if err := within.Range("CO2 in dry flue gas", co2Percent, leastCO2, 12, "%"); err != nil {
		return 0, err
	}
	if err := within.Range("heat input", netWatts, 0, 1e8, "W"); err != nil {
		return 0, err
	}
	return (3.72/co2Percent + 0.053) * 1e-6 * netWatts, nil
}

// Siegert holds the factors of one fuel in the formula of that name. Source:
// SourceSiegert.
type Siegert struct {
	A1, B float64
}

// The factors of the fuels.
var (
	SiegertNatural   = Siegert{0.37, 0.009}
	SiegertLiquefied = Siegert{0.42, 0.008}
)

// Loss is the flue loss in per cent of the net heat input.
//
//	q = (t_flue - t_air) (A1/CO2% + B)
//
// Flue gas from the air temperature to 400 degC, air from -30 to 60 degC, CO2
// from 1 to 14 %. Without the gain from condensation. Source: SourceSiegert.
func (s Siegert) Loss(flue, air, co2Percent float64) (float64, error) {
	if err := within.Range("air temperature", air, -30, 60, "degC"); err != nil {
		return 0, err
	}
	if err := within.Range("flue gas temperature", flue, air, 400, "degC"); err != nil {
		return 0, err
	}
	if err := within.Range("CO2 in dry flue gas", co2Percent, leastCO2, 14, "%"); err != nil {
		return 0, err
	}
	return (flue - air) * (s.A1/co2Percent + s.B), nil
}

// CORatio is the ratio of carbon monoxide to dioxide, both of the same dry
// sample: CO in ppm (0 to 100 000), CO2 in per cent (0.1 to 20). Source:
// SourceCO.
func CORatio(coPPM, co2Percent float64) (float64, error) {
	if err := within.Range("CO", coPPM, 0, 1e5, "ppm"); err != nil {
		return 0, err
	}
	if err := within.Range("CO2 in dry flue gas", co2Percent, 0.1, 20, "%"); err != nil {
		return 0, err
	}
	return coPPM * 1e-4 / co2Percent, nil
}

// UndilutedCO is the carbon monoxide in ppm that the sample would have without
// excess air.
//
//	CO0 = CO CO2max / CO2
//
// CO in ppm, CO2 from 0.1 % to the most of the fuel. Source: SourceCO.
func UndilutedCO(f *Fuel, coPPM, co2Percent float64) (float64, error) {
	most := f.MostCO2()
	if err := within.Range("CO", coPPM, 0, 1e5, "ppm"); err != nil {
		return 0, err
	}
	if err := within.Range("CO2 in dry flue gas", co2Percent, 0.1, most*(1+1e-6), "%"); err != nil {
		return 0, err
	}
	return coPPM * most / co2Percent, nil
}

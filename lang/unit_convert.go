package lang

import "sync"

// conversionOnly are spellings of conversion tables that are no units of the
// language: they would be ambiguous or unusual in a specification.
var conversionOnly = sync.OnceValue(func() map[string]Unit {
	return map[string]Unit{
		"Btu_IT":              {"Btu_IT", Energy, btu, 0, "International Table Btu", true},
		"Btu_th":              {"Btu_th", Energy, 1054.35026448889, 0, "thermochemical Btu", true}, // 1054.350264488 J
		"Btu_IT/h":            {"Btu_IT/h", Power, btu / 3600, 0, "", true},
		"Btu_IT/ft3":          {"Btu_IT/ft3", HeatValue, btu / ft3, 0, "", true},
		"Btu_IT/(h ft2 degF)": {"", Transmittance, btu / 3600 / (foot * foot) / degF, 0, "", true},
		"Btu_IT/(lb degF)":    {"", SpecificHeat, btu / pound / degF, 0, "", true},
		"W/(m2 K)":            {"", Transmittance, 1, 0, "", false},
		"kJ/(kg K)":           {"", SpecificHeat, 1000, 0, "", false},
		"L/min":               {"", VolumeFlow, 1e-3 / 60, 0, "", false},
		"gpm_US":              {"", VolumeFlow, gallon / 60, 0, "", true},
		"gpm_UK":              {"", VolumeFlow, 4.54609e-3 / 60, 0, "imperial gallons a minute", false},
		"gal_US":              {"", Volume, gallon, 0, "", true},
		"gal_UK":              {"", Volume, 4.54609e-3, 0, "imperial gallons", false},
		"ft3/min":             {"", VolumeFlow, ft3 / 60, 0, "", true},
		"fpm":                 {"", Velocity, foot / 60, 0, "", true},
		"atm":                 {"", Pressure, 101325, 0, "standard atmospheres", false},
		"mmHg":                {"", Pressure, 133.322387415, 0, "millimeters of mercury", false},
		"inHg":                {"", Pressure, 25.4 * 133.322387415, 0, "inches of mercury", true},
		"mmWC":                {"", Pressure, gravity, 0, "millimeters of water column", false},
		"inWC_39F":            {"", Pressure, inch * 999.972 * gravity, 0, "water at 39 F", true},
		"inWC_60F":            {"", Pressure, inch * 999.001 * gravity, 0, "water at 60 F", true},
		"kgf/cm2":             {"", Pressure, gravity * 1e4, 0, "", false},
		"psi/100ft":           {"", PressureGrad, psi / (100 * foot), 0, "", true},
		"hp_mech":             {"", Power, 550 * foot * 4.4482216152605, 0, "mechanical horsepower", true},
		"kcal_IT/h":           {"", Power, 4186.8 / 3600, 0, "", false},
		"kcal_th/h":           {"", Power, 4184.0 / 3600, 0, "", false},
		"ton_refrigeration":   {"", Power, 12000 * btu / 3600, 0, "", true},
		"therm_US":            {"", Energy, 1e5 * 1054.804, 0, "", true},
		"therm_EC":            {"", Energy, 1e5 * 1055.06, 0, "", false},
		"therm_US/h":          {"", Power, 1e5 * 1054.804 / 3600, 0, "", true},
		"cP":                  {"", Viscosity, 1e-3, 0, "centipoise", false},
		"Pa s":                {"", Viscosity, 1, 0, "", false},
		"Pa.s":                {"", Viscosity, 1, 0, "", false},
		"cSt":                 {"", kinematic, 1e-6, 0, "centistokes", false},
		"m2/s":                {"", kinematic, 1, 0, "", false},
		"degF_diff":           {"", TempDiff, degF, 0, "", true},
		"kJ/kg.K":             {"", SpecificHeat, 1000, 0, "", false},
		"J/kg.K":              {"", SpecificHeat, 1, 0, "", false},
		"W/m.K":               {"", Conductivity, 1, 0, "", false},
		"W/m2.K":              {"", Transmittance, 1, 0, "", false},
		"-":                   {"", Ratio, 1, 0, "a pure number", false},
	}
})

// kinematic viscosity occurs in conversions only.
const kinematic = lastDimension

func conversionUnit(symbol string) (*Unit, bool) {
	if u, ok := LookupUnit(symbol); ok {
		return u, true
	}
	if u, ok := conversionOnly()[symbol]; ok {
		return &u, true
	}
	return nil, false
}

// interchangeable tells dimensions that convert although the language keeps
// them apart: an angle is no slope, but a kelvin may count from absolute zero.
func interchangeable(a, b Dimension) bool {
	return a == Ratio && b == Count || a == Count && b == Ratio
}

// kelvin converts between K, taken as absolute, and degC or degF.
func kelvin(v float64, from, to string, f, t *Unit) (float64, bool) {
	const zeroCelsius = 273.15
	switch {
	case from == "K" && t.Dim == Temperature:
		return FromSI(v-zeroCelsius, t), true
	case to == "K" && f.Dim == Temperature:
		return ToSI(v, f) + zeroCelsius, true
	}
	return 0, false
}

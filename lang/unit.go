package lang

import (
	"errors"
	"fmt"
	"sync"
)

// System is a language of units.
type System uint8

// The two systems.
const (
	Metric System = iota
	US
)

// Unit is one unit of measurement. value in SI = (value written + Offset) x Factor.
type Unit struct {
	Symbol string
	Dim    Dimension
	Factor float64
	Offset float64
	Name   string // spoken
	US     bool   // offered first where the plant speaks US units
}

// Inches reports whether a pair in this unit is a fraction, as in 1 1/4 in.
func (u *Unit) Inches() bool { return u.Symbol == "in" || u.Symbol == "in/ft" }

const (
	inch    = 0.0254
	foot    = 0.3048
	pound   = 0.45359237
	psi     = 4.4482216152605 / (inch * inch) // pound-force by square inch
	btu     = 1055.05585262                   // International Table Btu
	gallon  = 231 * inch * inch * inch        // US liquid gallon
	gravity = 9.80665
	inWC    = inch * 1000 * gravity // conventional water, 1000 kg/m3
	ft3     = foot * foot * foot
	degF    = 5.0 / 9.0
)

// units lists every unit of the language, the usual metric and US unit of a
// dimension first.
var units = []Unit{
	{"off", Count, 1, 0, "pieces", false},
	{"unit", Count, 1, 0, "units", false},
	{"phase", Count, 1, 0, "phases", false},
	{"core", Count, 1, 0, "cores", false},
	{"ratio", Ratio, 1, 0, "ratio, a pure number", false},
	{"%", Ratio, 0.01, 0, "per cent", false},
	{"ppm", Ratio, 1e-6, 0, "parts per million by volume", false},
	{"m", Length, 1, 0, "meters", false},
	{"mm", Length, 1e-3, 0, "millimeters", false},
	{"cm", Length, 1e-2, 0, "centimeters", false},
	{"ft", Length, foot, 0, "feet", true},
	{"in", Length, inch, 0, "inches", true},
	{"m2", Area, 1, 0, "square meters", false},
	{"cm2", Area, 1e-4, 0, "square centimeters", false},
	{"mm2", Area, 1e-6, 0, "square millimeters", false},
	{"in2", Area, inch * inch, 0, "square inches", true},
	{"ft2", Area, foot * foot, 0, "square feet", true},
	{"m3", Volume, 1, 0, "cubic meters", false},
	{"l", Volume, 1e-3, 0, "liters", false},
	{"L", Volume, 1e-3, 0, "liters", false},
	{"gal", Volume, gallon, 0, "US gallons", true},
	{"ft3", Volume, ft3, 0, "cubic feet", true},
	{"kg", Mass, 1, 0, "kilograms", false},
	{"g", Mass, 1e-3, 0, "grams", false},
	{"t", Mass, 1000, 0, "tonnes", false},
	{"lb", Mass, pound, 0, "pounds", true},
	{"s", Time, 1, 0, "seconds", false},
	{"min", Time, 60, 0, "minutes", false},
	{"h", Time, 3600, 0, "hours", false},
	{"d", Time, 86400, 0, "days", false},
	{"degC", Temperature, 1, 0, "degrees Celsius", false},
	{"degF", Temperature, degF, -32, "degrees Fahrenheit", true},
	{"K", TempDiff, 1, 0, "kelvin of difference", false},
	{"F", TempDiff, degF, 0, "Fahrenheit degrees of difference", true},
	{"kW", Power, 1000, 0, "kilowatts", false},
	{"W", Power, 1, 0, "watts", false},
	{"MW", Power, 1e6, 0, "megawatts", false},
	{"MBH", Power, 1000 * btu / 3600, 0, "thousand Btu an hour", true},
	{"Btu/h", Power, btu / 3600, 0, "Btu an hour", true},
	{"kWh", Energy, 3.6e6, 0, "kilowatt hours", false},
	{"MWh", Energy, 3.6e9, 0, "megawatt hours", false},
	{"J", Energy, 1, 0, "joules", false},
	{"kJ", Energy, 1000, 0, "kilojoules", false},
	{"MJ", Energy, 1e6, 0, "megajoules", false},
	{"Btu", Energy, btu, 0, "Btu", true},
	{"therm", Energy, 1e5 * 1054.804, 0, "US therms", true},
	{"kPa", Pressure, 1000, 0, "kilopascals", false},
	{"Pa", Pressure, 1, 0, "pascals", false},
	{"mbar", Pressure, 100, 0, "millibars", false},
	{"bar", Pressure, 1e5, 0, "bars", false},
	{"kN/m2", Pressure, 1000, 0, "kilonewtons by square meter", false},
	{"psi", Pressure, psi, 0, "pounds by square inch", true},
	{"inWC", Pressure, inWC, 0, "inches of water column", true},
	{"ftWC", Pressure, 12 * inWC, 0, "feet of water column", true},
	{"psf", Pressure, psi / 144, 0, "pounds by square foot", true},
	{"mWC", Pressure, 1000 * gravity, 0, "meters of water column", false},
	{"Pa/m", PressureGrad, 1, 0, "pascals a meter", false},
	{"kPa/m", PressureGrad, 1000, 0, "kilopascals a meter", false},
	{"ftWC/100ft", PressureGrad, 12 * inWC / (100 * foot), 0, "feet of water in a hundred feet", true},
	{"m3/h", VolumeFlow, 1.0 / 3600, 0, "cubic meters an hour", false},
	{"m3/s", VolumeFlow, 1, 0, "cubic meters a second", false},
	{"l/s", VolumeFlow, 1e-3, 0, "liters a second", false},
	{"L/s", VolumeFlow, 1e-3, 0, "liters a second", false},
	{"l/min", VolumeFlow, 1e-3 / 60, 0, "liters a minute", false},
	{"l/h", VolumeFlow, 1e-3 / 3600, 0, "liters an hour", false},
	{"gpm", VolumeFlow, gallon / 60, 0, "US gallons a minute", true},
	{"cfm", VolumeFlow, ft3 / 60, 0, "cubic feet a minute", true},
	{"ft3/h", VolumeFlow, ft3 / 3600, 0, "cubic feet an hour", true},
	{"gal/h", VolumeFlow, gallon / 3600, 0, "US gallons an hour", true},
	{"kg/s", MassFlow, 1, 0, "kilograms a second", false},
	{"g/s", MassFlow, 1e-3, 0, "grams a second", false},
	{"kg/h", MassFlow, 1.0 / 3600, 0, "kilograms an hour", false},
	{"lb/h", MassFlow, pound / 3600, 0, "pounds an hour", true},
	{"m/s", Velocity, 1, 0, "meters a second", false},
	{"ft/s", Velocity, foot, 0, "feet a second", true},
	{"ft/min", Velocity, foot / 60, 0, "feet a minute", true},
	{"MJ/m3", HeatValue, 1e6, 0, "megajoules by cubic meter", false},
	{"kWh/m3", HeatValue, 3.6e6, 0, "kilowatt hours by cubic meter", false},
	{"Btu/ft3", HeatValue, btu / ft3, 0, "Btu by cubic foot", true},
	{"deg", Angle, degree, 0, "degrees", false},
	{"mm/m", Slope, 1e-3, 0, "millimeters by meter", false},
	{"in/ft", Slope, 1.0 / 12, 0, "inches by foot", true},
	{"W/mK", Conductivity, 1, 0, "watts by meter and kelvin", false},
	{"Btu/hftF", Conductivity, btu / 3600 / foot / degF, 0, "Btu by hour, foot and Fahrenheit degree", true},
	{"Btuin/hft2F", Conductivity, btu / 3600 * inch / (foot * foot) / degF, 0, "Btu inch by hour, square foot and Fahrenheit degree", true},
	{"W/m2K", Transmittance, 1, 0, "watts by square meter and kelvin", false},
	{"Btu/hft2F", Transmittance, btu / 3600 / (foot * foot) / degF, 0, "Btu by hour, square foot and Fahrenheit degree", true},
	{"W/K", Conductance, 1, 0, "watts by kelvin", false},
	{"kW/K", Conductance, 1000, 0, "kilowatts by kelvin", false},
	{"Btu/hF", Conductance, btu / 3600 / degF, 0, "Btu by hour and Fahrenheit degree", true},
	{"kJ/kgK", SpecificHeat, 1000, 0, "kilojoules by kilogram and kelvin", false},
	{"Btu/lbF", SpecificHeat, btu / pound / degF, 0, "Btu by pound and Fahrenheit degree", true},
	{"kg/m3", Density, 1, 0, "kilograms by cubic meter", false},
	{"lb/ft3", Density, pound / ft3, 0, "pounds by cubic foot", true},
	{"Pas", Viscosity, 1, 0, "pascal seconds", false},
	{"W/m", HeatLossPerRun, 1, 0, "watts a meter", false},
	{"Btu/hft", HeatLossPerRun, btu / 3600 / foot, 0, "Btu by hour and foot", true},
	{"V", Voltage, 1, 0, "volts", false},
	{"A", Current, 1, 0, "amperes", false},
	{"mA", Current, 1e-3, 0, "milliamperes", false},
	{"N", Force, 1, 0, "newtons", false},
	{"kN", Force, 1000, 0, "kilonewtons", false},
	{"lbf", Force, 4.4482216152605, 0, "pounds-force", true},
	{"mmol/l", Hardness, 1, 0, "millimoles by liter of alkaline earths", false},
	{"mol/m3", Hardness, 1, 0, "moles by cubic meter of alkaline earths", false},
	{"degdH", Hardness, 1 / 5.6, 0, "German degrees of hardness", false},
	{"degfH", Hardness, 0.1, 0, "French degrees of hardness", false},
	{"gr/gal", Hardness, 0.1712, 0, "grains by US gallon as calcium carbonate", true},
	{"uS/cm", ElectricConductivity, 1e-4, 0, "microsiemens by centimeter", false},
	{"pH", Acidity, 1, 0, "pH", false},
	{"%LEL", ExplosiveLimit, 0.01, 0, "per cent of the lower explosive limit", false},
	{"mg/l", Concentration, 1e-3, 0, "milligrams by liter", false},
	{"l/kW", VolumePerPower, 1e-6, 0, "liters by kilowatt", false},
	{"gal/MBH", VolumePerPower, gallon / (1000 * btu / 3600), 0, "US gallons by thousand Btu an hour", true},
	{"cm2/kW", AreaPerPower, 1e-7, 0, "square centimeters by kilowatt", false},
	{"m3/h/kW", FlowPerPower, 1.0 / 3600 / 1000, 0, "cubic meters an hour by kilowatt", false},
	{"Kv", FlowCoefficient, 1.0 / 3600, 0, "cubic meters an hour at 1 bar", false},
	{"Cv", FlowCoefficient, 0.865 / 3600, 0, "US gallons a minute at 1 psi", true},
	{"dBA", Sound, 1, 0, "decibels, A-weighted", false},
	{"Hz", Frequency, 1, 0, "hertz", false},
	{"starts/h", Frequency, 1.0 / 3600, 0, "starts an hour", false},
	{"Nm", Torque, 1, 0, "newton meters", false},
}

const degree = 0.017453292519943295 // pi/180

var unitTable = sync.OnceValue(func() map[string]*Unit {
	m := make(map[string]*Unit, len(units))
	for i := range units {
		m[units[i].Symbol] = &units[i]
	}
	return m
})

// LookupUnit finds a unit of the language by its symbol.
func LookupUnit(symbol string) (*Unit, bool) {
	u, ok := unitTable()[symbol]
	return u, ok
}

// UnitsOf lists the units of a dimension, those of the system first.
func UnitsOf(d Dimension, sys System) []*Unit {
	var first, rest []*Unit
	for i := range units {
		u := &units[i]
		switch {
		case u.Dim != d:
		case u.US == (sys == US):
			first = append(first, u)
		default:
			rest = append(rest, u)
		}
	}
	return append(first, rest...)
}

var dimensionsUS = sync.OnceValue(func() (has [lastDimension]bool) {
	for i := range units {
		has[units[i].Dim] = has[units[i].Dim] || units[i].US
	}
	return has
})

// HasUS tells a dimension that is written in units of its own in the US.
func HasUS(d Dimension) bool { return d < lastDimension && dimensionsUS()[d] }

// ToSI turns a written number into the SI unit of the dimension.
func ToSI(v float64, u *Unit) float64 { return (v + u.Offset) * u.Factor }

// FromSI is the inverse of ToSI.
func FromSI(v float64, u *Unit) float64 { return v/u.Factor - u.Offset }

var siSymbols = [lastDimension]string{
	Count: "1", Ratio: "1", Length: "m", Area: "m2", Volume: "m3", Mass: "kg", Time: "s", Temperature: "degC", TempDiff: "K",
	Power: "W", Energy: "J", Pressure: "Pa", PressureGrad: "Pa/m", VolumeFlow: "m3/s", MassFlow: "kg/s", Velocity: "m/s",
	HeatValue: "J/m3", Angle: "rad", Slope: "m/m", Conductivity: "W/(m.K)", Transmittance: "W/(m2.K)", Conductance: "W/K",
	SpecificHeat: "J/(kg.K)", Density: "kg/m3", Viscosity: "Pa.s", HeatLossPerRun: "W/m", Voltage: "V", Current: "A", Force: "N",
	Hardness: "mol/m3", ElectricConductivity: "S/m", Acidity: "pH", ExplosiveLimit: "1", Concentration: "kg/m3",
	VolumePerPower: "m3/W", AreaPerPower: "m2/W", FlowPerPower: "m3/(s.W)", FlowCoefficient: "m3/s", Sound: "dB(A)",
	Frequency: "Hz", Torque: "N.m",
}

// SIUnit is the symbol of the unit in which values of a dimension are held.
func SIUnit(d Dimension) string {
	if d < lastDimension {
		return siSymbols[d]
	}
	return ""
}

// ErrUnit is wrapped by the errors of Convert.
var ErrUnit = errors.New("unit")

// Convert turns a number from one unit into another of the same dimension. It
// also knows the spellings of conversion tables, see conversionOnly.
func Convert(v float64, from, to string) (float64, error) {
	f, ok := conversionUnit(from)
	if !ok {
		return 0, fmt.Errorf("%w %q is not known%s", ErrUnit, from, meant(from))
	}
	t, ok := conversionUnit(to)
	if !ok {
		return 0, fmt.Errorf("%w %q is not known%s", ErrUnit, to, meant(to))
	}
	if k, ok := kelvin(v, from, to, f, t); ok {
		return k, nil
	}
	if f.Dim != t.Dim && !interchangeable(f.Dim, t.Dim) {
		return 0, fmt.Errorf("%w %q is a %s and %q is a %s", ErrUnit, from, f.Dim, to, t.Dim)
	}
	if from == to {
		return v, nil
	}
	return FromSI(ToSI(v, f), t), nil
}

func meant(symbol string) string {
	if s := SuggestUnit(symbol, NoDimension); s != "" {
		return "; did you mean " + s + "?"
	}
	return ""
}

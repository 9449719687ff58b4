package gas

import (
	"errors"
	"math"

	"example.org/tundish/check/calc/within"
	"example.org/tundish/check/cite"
)

// Basis says whether a heat or a calorific value counts the heat of the water
// vapor (gross) or not (net). The zero value is no basis: every heat must
// state its own, because a slip is an error of 11 % in rate and vents.
type Basis uint8

// The two bases.
const (
	Unstated Basis = iota
	Net
	Gross
)

// String is the word of the plant language.
func (b Basis) String() string {
	switch b {
	case Net:
		return "net"
	case Gross:
		return "gross"
	}
	return "not stated"
}

// HeatInput is a heat input with its basis.
type HeatInput struct {
	Watts float64
	Basis Basis
}

// CalorificValue is the heat of one cubic meter of gas at 15 degC and
// 1013.25 mbar dry, with its basis.
type CalorificValue struct {
	JPerM3 float64
	Basis  Basis
}

// ErrBasis is returned when heat and calorific value do not stand on the same
// stated basis.
var ErrBasis = errors.New("the heat input and the calorific value must state the same basis, both net or both gross")

// Fuel is what the calculations need to know of a gas. Volumes are at 15 degC
// and 1013.25 mbar dry.
type Fuel struct {
	Name            string
	Gross           float64 // calorific value, J/m3
	Net             float64 // calorific value, J/m3
	RelativeDensity float64 // to air
	Viscosity       float64 // dynamic, Pa.s
	Nominal         float64 // supply pressure, Pa gauge; 0: not known
	Lowest          float64 // supply pressure, Pa gauge; 0: not known
	Highest         float64 // supply pressure, Pa gauge; 0: not known
	Source          cite.Source
}

// The fuels known by name.
var fuels = [...]Fuel{
	{
		Name: "G20", Gross: 37.78e6, Net: 34.02e6, RelativeDensity: 0.555, Viscosity: 1.1e-5,
		Nominal: 2000, Lowest: 1700, Highest: 2500, Source: SourceEN437,
	},
	{
		Name: "G31", Gross: 95.65e6, Net: 88.00e6, RelativeDensity: 1.550, Viscosity: 8.0e-6,
		Nominal: 3700, Lowest: 2500, Highest: 4500, Source: SourceEN437,
	},
	{
		// 38.5 MJ/m3 gross is the careful end of the design range, net by 1.11.
		Name: "UK natural gas", Gross: 38.5e6, Net: 38.5e6 / 1.11, RelativeDensity: 0.6, Viscosity: 1.1e-5,
		Nominal: 2100, Lowest: 1900, Highest: 2300, Source: SourceUKGas,
	},
	{
		// 1000 Btu/ft3 gross, net by 1.11.
		Name: "US natural gas", Gross: 1000 * joulePerBtu / m3PerFt3, Net: 1000 * joulePerBtu / m3PerFt3 / 1.11,
		RelativeDensity: 0.6, Viscosity: 1.1e-5, Source: SourceUSGas,
	},
}

const (
	joulePerBtu = 1055.05585262  // International Table Btu, a definition
	m3PerFt3    = 0.028316846592 // 0.3048^3, a definition
)

// Fuels returns the table of fuels.
func Fuels() []Fuel { return append([]Fuel(nil), fuels[:]...) }

// FuelNamed returns the fuel of that name: "G20", "G31", "UK natural gas",
// "US natural gas".
func FuelNamed(name string) (*Fuel, bool) {
	for i := range fuels {
		if fuels[i].Name == name {
			f := fuels[i]
			return &f, true
		}
	}
	return nil, false
}

// Value is the calorific value of the fuel on a basis.
func (f *Fuel) Value(b Basis) (CalorificValue, error) {
	switch b {
	case Net:
		return CalorificValue{f.Net, Net}, nil
	case Gross:
		return CalorificValue{f.Gross, Gross}, nil
	}
	return CalorificValue{}, ErrBasis
}

// Convert gives a heat input on another basis by the fuel's own ratio of gross
// to net calorific value. Source: SourceEN437; SourceGrossNet prints the ratio
// with two decimals.
func (f *Fuel) Convert(h HeatInput, to Basis) (HeatInput, error) {
	switch {
	case h.Basis == Unstated || to == Unstated || h.Basis > Gross || to > Gross:
		return HeatInput{}, ErrBasis
	case h.Basis == to:
		return h, nil
	case to == Gross:
		return HeatInput{h.Watts * f.Gross / f.Net, Gross}, nil
	}
	return HeatInput{h.Watts * f.Net / f.Gross, Net}, nil
}

// Wobbe is the gross Wobbe index of the fuel in J/m3.
//
//	W = Hs / sqrt(d)
//
// Source: SourceEN437.
func (f *Fuel) Wobbe() float64 { return f.Gross / math.Sqrt(f.RelativeDensity) }

// Rate is the gas rate in m3/s at 15 degC and 1013.25 mbar.
//
//	Q = P / CV, both on the same basis
//
// The heat input holds from 0 to 100 MW, the calorific value from 1 to 200
// MJ/m3; two different or unstated bases are ErrBasis. Source: SourceRate.
func Rate(h HeatInput, cv CalorificValue) (float64, error) {
	if h.Basis != cv.Basis || h.Basis == Unstated || h.Basis > Gross {
		return 0, ErrBasis
	}
	if err := within.Range("heat input", h.Watts, 0, 1e8, "W"); err != nil {
		return 0, err
	}
	if err := within.Range("calorific value", cv.JPerM3, 1e6, 2e8, "J/m3"); err != nil {
		return 0, err
	}
	return h.Watts / cv.JPerM3, nil
}

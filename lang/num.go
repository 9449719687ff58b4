package lang

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Num prints a number with so many significant digits, without exponent in the
// range of the trade, without trailing zeros behind a point, never as "-0". It
// is the one place where numbers become text.
func Num(v float64, digits int) string {
	if math.IsNaN(v) {
		return "not a number"
	}
	if math.IsInf(v, 0) {
		return "without limit"
	}
	if v == 0 {
		return "0"
	}
	a := math.Abs(v)
	if a >= 1e15 || a < 1e-9 {
		return strconv.FormatFloat(v, 'e', max(digits-1, 0), 64)
	}
	whole := int(math.Floor(math.Log10(a))) + 1
	decimals := max(digits-whole, 0)
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.IndexByte(s, '.') >= 0 {
		s = strings.TrimRight(s, "0")
		s = strings.TrimSuffix(s, ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// printDigits is how many significant digits messages show.
const printDigits = 4

// In prints an SI value in a unit of the language.
func In(v float64, symbol string) string {
	u, ok := LookupUnit(symbol)
	if !ok {
		return Num(v, printDigits) + " " + symbol
	}
	return Num(FromSI(v, u), printDigits) + " " + symbol
}

// InUp prints like In, rounded up: a value that is to reach v reaches it.
func InUp(v float64, symbol string) string { return inRounded(v, symbol, math.Ceil, -1) }

// InDown prints like In, rounded down: a value that is to stay under v does.
func InDown(v float64, symbol string) string { return inRounded(v, symbol, math.Floor, 1) }

func inRounded(v float64, symbol string, round func(float64) float64, slack float64) string {
	u, ok := LookupUnit(symbol)
	x := v
	if ok {
		x = FromSI(v, u)
	}
	if x == 0 || math.IsNaN(x) || math.IsInf(x, 0) {
		return In(v, symbol)
	}
	scale := math.Pow(10, printDigits-1-math.Floor(math.Log10(math.Abs(x))))
	// What stands at the digit but for the noise of the sum is not moved.
	return Num(round(x*scale+slack*1e-6)/scale, printDigits) + " " + symbol
}

// usual names the units in which a dimension is printed when nobody asks for
// another; several by size of the value.
type usual struct {
	from   float64 // SI value from which the unit is used
	symbol string
}

var usualUnits = [2][lastDimension][]usual{
	Metric: {
		Count: {{0, "off"}}, Ratio: {{0, "ratio"}}, Length: {{0, "mm"}, {1, "m"}}, Area: {{0, "cm2"}, {1, "m2"}},
		Volume: {{0, "l"}, {10, "m3"}}, Mass: {{0, "kg"}}, Time: {{0, "s"}, {120, "min"}, {7200, "h"}}, Temperature: {{0, "degC"}},
		TempDiff: {{0, "K"}}, Power: {{0, "kW"}}, Energy: {{0, "kWh"}}, Pressure: {{0, "Pa"}, {1000, "kPa"}, {1e5, "bar"}},
		PressureGrad: {{0, "Pa/m"}}, VolumeFlow: {{0, "m3/h"}}, MassFlow: {{0, "g/s"}, {0.5, "kg/s"}}, Velocity: {{0, "m/s"}},
		HeatValue: {{0, "MJ/m3"}}, Angle: {{0, "deg"}}, Slope: {{0, "mm/m"}}, Conductivity: {{0, "W/mK"}}, Transmittance: {{0, "W/m2K"}},
		Conductance: {{0, "W/K"}}, SpecificHeat: {{0, "kJ/kgK"}}, Density: {{0, "kg/m3"}}, Viscosity: {{0, "Pas"}}, HeatLossPerRun: {{0, "W/m"}},
		Voltage: {{0, "V"}}, Current: {{0, "A"}}, Force: {{0, "N"}, {1000, "kN"}}, Hardness: {{0, "mmol/l"}}, ElectricConductivity: {{0, "uS/cm"}},
		Acidity: {{0, "pH"}}, ExplosiveLimit: {{0, "%LEL"}}, Concentration: {{0, "mg/l"}}, VolumePerPower: {{0, "l/kW"}}, AreaPerPower: {{0, "cm2/kW"}},
		FlowPerPower: {{0, "m3/h/kW"}}, FlowCoefficient: {{0, "Kv"}}, Sound: {{0, "dBA"}}, Frequency: {{0, "starts/h"}}, Torque: {{0, "Nm"}},
	},
	US: {
		Count: {{0, "off"}}, Ratio: {{0, "ratio"}}, Length: {{0, "in"}, {foot, "ft"}}, Area: {{0, "in2"}, {1, "ft2"}}, Volume: {{0, "gal"}},
		Mass: {{0, "lb"}}, Time: {{0, "s"}, {120, "min"}, {7200, "h"}}, Temperature: {{0, "degF"}}, TempDiff: {{0, "F"}}, Power: {{0, "MBH"}}, Energy: {{0, "Btu"}},
		Pressure: {{0, "inWC"}, {3500, "psi"}}, PressureGrad: {{0, "ftWC/100ft"}}, VolumeFlow: {{0, "gpm"}}, MassFlow: {{0, "lb/h"}},
		Velocity: {{0, "ft/s"}}, HeatValue: {{0, "Btu/ft3"}}, Angle: {{0, "deg"}}, Slope: {{0, "in/ft"}}, Conductivity: {{0, "Btuin/hft2F"}},
		Transmittance: {{0, "Btu/hft2F"}}, Conductance: {{0, "Btu/hF"}}, SpecificHeat: {{0, "Btu/lbF"}}, Density: {{0, "lb/ft3"}}, Viscosity: {{0, "Pas"}},
		HeatLossPerRun: {{0, "Btu/hft"}}, Voltage: {{0, "V"}}, Current: {{0, "A"}}, Force: {{0, "lbf"}}, Hardness: {{0, "gr/gal"}},
		ElectricConductivity: {{0, "uS/cm"}}, Acidity: {{0, "pH"}}, ExplosiveLimit: {{0, "%LEL"}}, Concentration: {{0, "mg/l"}},
		VolumePerPower: {{0, "gal/MBH"}}, AreaPerPower: {{0, "cm2/kW"}}, FlowPerPower: {{0, "m3/h/kW"}}, FlowCoefficient: {{0, "Cv"}}, Sound: {{0, "dBA"}},
		Frequency: {{0, "starts/h"}}, Torque: {{0, "Nm"}},
	},
}

// Quantity prints an SI value in the usual unit of its dimension.
func Quantity(v float64, d Dimension, sys System) string {
	s := UsualUnit(v, d, sys)
	if s == "" {
		return Num(v, printDigits)
	}
	return In(v, s)
}

// UsualUnit is the unit in which a value of a dimension is printed; empty for
// one without a unit.
func UsualUnit(v float64, d Dimension, sys System) string {
	if d >= lastDimension {
		return ""
	}
	s := ""
	for _, u := range usualUnits[sys][d] {
		if s == "" || math.Abs(v) >= u.from {
			s = u.symbol
		}
	}
	return s
}

// ErrQuantity is wrapped by the errors of ParseQuantity.
var ErrQuantity = errors.New("not a quantity")

// ParseQuantity reads a quantity that stands alone: "35 mm", "35mm",
// "80/60 degC", "1 1/4 in", "0.6". unit is nil for a bare number. Fractions of
// inches come as one number.
func ParseQuantity(text string) (num, num2 float64, form NumberForm, unit *Unit, err error) {
	t := strings.TrimSpace(text)
	if v, e := strconv.ParseFloat(t, 64); e == nil && !math.IsNaN(v) && !math.IsInf(v, 0) {
		return v, 0, Single, nil, nil // takes 1.1e-5 too, as desk users write it
	}
	if i := strings.LastIndexAny(t, " "); i > 0 { // exponent and unit: 1.1e-5 Pas
		if v, e := strconv.ParseFloat(t[:i], 64); e == nil && strings.ContainsAny(t[:i], "eE") {
			if u, ok := conversionUnit(t[i+1:]); ok {
				return v, 0, Single, u, nil
			}
		}
	}
	f := Parse(NewSource("", "value "+t), nil)
	if len(f.Problems) > 0 || len(f.Statements) != 1 || len(f.Statements[0].Head.Items) != 1 || len(f.Statements[0].Head.Items[0].Exprs) != 1 {
		return 0, 0, Single, nil, fmt.Errorf("%w: %q", ErrQuantity, text)
	}
	e := &f.Statements[0].Head.Items[0].Exprs[0]
	switch e.Kind {
	case NumberExpr:
		return e.Num, e.Num2, e.Form, nil, nil
	case QuantityExpr:
		u, ok := conversionUnit(e.UnitText)
		if !ok {
			return 0, 0, Single, nil, fmt.Errorf("%w: the unit %q is not known%s", ErrQuantity, e.UnitText, meant(e.UnitText))
		}
		if e.Form == Pair && u.Inches() {
			return e.Value(), 0, Single, u, nil
		}
		return e.Num, e.Num2, e.Form, u, nil
	}
	return 0, 0, Single, nil, fmt.Errorf("%w: %q", ErrQuantity, text)
}

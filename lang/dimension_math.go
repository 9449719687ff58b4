package lang

// exponents of kilogram, meter, second and kelvin; two dimensions with the same
// exponents convert into each other in a sum of a requirement only when the
// language calls them the same thing.
type exponents [4]int8

var dimensionExponents = [lastDimension]exponents{
	Length: {0, 1}, Area: {0, 2}, Volume: {0, 3}, Mass: {1}, Time: {0, 0, 1}, Temperature: {0, 0, 0, 1}, TempDiff: {0, 0, 0, 1},
	Power: {1, 2, -3}, Energy: {1, 2, -2}, Pressure: {1, -1, -2}, PressureGrad: {1, -2, -2}, VolumeFlow: {0, 3, -1},
	MassFlow: {1, 0, -1}, Velocity: {0, 1, -1}, HeatValue: {1, -1, -2}, Conductivity: {1, 1, -3, -1},
	Transmittance: {1, 0, -3, -1}, Conductance: {1, 2, -3, -1}, SpecificHeat: {0, 2, -2, -1}, Density: {1, -3},
	Viscosity: {1, -1, -1}, HeatLossPerRun: {1, 1, -3}, Force: {1, 1, -2}, Concentration: {1, -3},
	VolumePerPower: {-1, 1, 3}, AreaPerPower: {-1, 0, 3}, FlowPerPower: {-1, 1, 2}, FlowCoefficient: {0, 3, -1},
	Frequency: {0, 0, -1}, Torque: {1, 2, -2},
}

var dimensionNames = [lastDimension]string{
	"value without a dimension", "count", "ratio", "length", "area", "volume", "mass", "time", "temperature", "temperature difference", "power",
	"energy", "pressure", "pressure gradient", "volume flow", "mass flow", "velocity", "calorific value", "angle", "slope",
	"conductivity", "heat transfer coefficient", "conductance", "specific heat", "density", "viscosity", "heat loss per length",
	"voltage", "current", "force", "hardness", "electric conductivity", "acidity", "share of the explosive limit", "concentration",
	"volume per power", "area per power", "flow per power", "flow coefficient", "sound level", "frequency", "torque", "computed value",
}

// String names the dimension in the trade's words.
func (d Dimension) String() string {
	if d < lastDimension {
		return dimensionNames[d]
	}
	return "computed value"
}

// pure dimensions drop out of a product.
func pure(d Dimension) bool {
	switch d {
	case NoDimension, Count, Ratio, Slope, Angle, ExplosiveLimit:
		return true
	}
	return false
}

func named(e exponents) Dimension {
	if e == (exponents{}) {
		return Ratio
	}
	for d := Length; d < Derived; d++ {
		if d != Temperature && dimensionExponents[d] == e {
			return d
		}
	}
	return Derived
}

// MulDim is the dimension of a product.
func MulDim(a, b Dimension) Dimension {
	switch {
	case pure(a):
		return b
	case pure(b):
		return a
	case a == Derived || b == Derived:
		return Derived
	}
	x, y := dimensionExponents[a], dimensionExponents[b]
	for i := range x {
		x[i] += y[i]
	}
	return named(x)
}

// DivDim is the dimension of a quotient.
func DivDim(a, b Dimension) Dimension {
	switch {
	case a == b:
		return Ratio
	case pure(b):
		return a
	case a == Derived || b == Derived:
		return Derived
	}
	var x exponents
	if !pure(a) {
		x = dimensionExponents[a]
	}
	y := dimensionExponents[b]
	for i := range x {
		x[i] -= y[i]
	}
	return named(x)
}

// AddDim is the dimension of a sum or difference; ok is false where the two do
// not go together. A temperature less a temperature is a difference.
func AddDim(a, b Dimension, minus bool) (sum Dimension, ok bool) {
	switch {
	case a == Temperature && b == Temperature:
		return TempDiff, minus
	case a == Temperature && b == TempDiff:
		return Temperature, true
	case a == TempDiff && b == Temperature:
		return Temperature, !minus
	}
	return a, Comparable(a, b)
}

// Comparable tells whether two values may be compared or added.
func Comparable(a, b Dimension) bool {
	if a == b {
		return true
	}
	if pure(a) && pure(b) {
		return true
	}
	return a == Derived || b == Derived
}

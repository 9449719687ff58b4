package combustion

import (
	"math"

	"example.org/tundish/check/calc/within"
)

// Coefficients n1 to n10 of region 4. Source: SourceSaturation.
const (
	n1  = 0.11670521452767e4
	n2  = -0.72421316703206e6
	n3  = -0.17073846940092e2
	n4  = 0.12020824702470e5
	n5  = -0.32325550322333e7
	n6  = 0.14915108613530e2
	n7  = -0.48232657361591e4
	n8  = 0.40511340542057e6
	n9  = -0.23855557567849
	n10 = 0.65017534844798e3
)

// SaturationPressure is the pressure in Pa of saturated water vapor at a
// temperature from 0 to 370 degC. Source: SourceSaturation.
func SaturationPressure(celsius float64) (float64, error) {
	if err := within.Range("temperature", celsius, 0, 370, "degC"); err != nil {
		return 0, err
	}
	return saturationPressure(celsius), nil
}

func saturationPressure(celsius float64) float64 {
	t := celsius + 273.15
	v := t + n9/(t-n10)
	a := v*v + n1*v + n2
	b := n3*v*v + n4*v + n5
	c := n6*v*v + n7*v + n8
	q := 2 * c / (-b + math.Sqrt(b*b-4*a*c))
	return q * q * q * q * 1e6
}

// SaturationTemperature is the temperature in degC of saturated water vapor at
// a pressure from 611.3 Pa (0 degC) to 21 MPa. Source: SourceSaturation.
func SaturationTemperature(pascal float64) (float64, error) {
	if err := within.Range("vapor pressure", pascal, 611.213, 21e6, "Pa"); err != nil {
		return 0, err
	}
	beta := math.Sqrt(math.Sqrt(pascal / 1e6))
	e := beta*beta + n3*beta + n6
	f := n1*beta*beta + n4*beta + n7
	g := n2*beta*beta + n5*beta + n8
	d := 2 * g / (-f - math.Sqrt(f*f-4*e*g))
	return (n10+d-math.Sqrt((n10+d)*(n10+d)-4*(n9+n10*d)))/2 - 273.15, nil
}

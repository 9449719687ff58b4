package valve

import (
	"math"

	"example.org/tundish/check/calc/within"
)

// steam holds saturated steam at whole bars absolute: evaporation heat in
// kJ/kg and volume in m3/kg. Source: SourceSteam.
var steam = [...][3]float64{
	{1, 2257.4, 1.6939},
	{2, 2201.5, 0.88568},
	{3, 2163.4, 0.60576},
	{4, 2133.3, 0.46238},
	{5, 2107.9, 0.37480},
	{6, 2085.6, 0.31558},
	{7, 2065.6, 0.27277},
	{8, 2047.3, 0.24034},
	{9, 2030.3, 0.21489},
	{10, 2014.4, 0.19436},
	{11, 1999.5, 0.17745},
	{12, 1985.3, 0.16326},
}

// Steam gives saturated steam at an absolute pressure of 1 to 12 bar:
// evaporation heat in kJ/kg and volume in m3/kg. Between whole bars the heat
// and the product of pressure and volume run straight over the logarithm of the
// pressure, within 0.1 %. Source: SourceSteam.
func Steam(absoluteBar float64) (heat, volume float64, err error) {
	if err := within.Range("steam pressure", absoluteBar, 1, 12, "bar abs"); err != nil {
		return 0, 0, err
	}
	i := min(int(absoluteBar), len(steam)-1)
	a, b := &steam[i-1], &steam[i]
	t := math.Log(absoluteBar/a[0]) / math.Log(b[0]/a[0])
	heat = a[1] + t*(b[1]-a[1])
	product := a[0]*a[2] + t*(b[0]*b[2]-a[0]*a[2])
	return heat, product / absoluteBar, nil
}

// SteamRate is the steam in kg/h that a heat output of 0 to 1e5 kW raises from
// boiling water of an evaporation heat of 1500 to 2501 kJ/kg.
//
//	m = 3600 Q/hfg
//
// Source: SourceHeatToSteam.
func SteamRate(outputKW, heat float64) (float64, error) {
	if err := within.Range("heat output", outputKW, 0, 1e5, "kW"); err != nil {
		return 0, err
	}
	if err := within.Range("evaporation heat", heat, 1500, 2501, "kJ/kg"); err != nil {
		return 0, err
	}
	return 3600 * outputKW / heat, nil
}

// FlowFactor is the factor C of EN ISO 4126-1 from the isentropic exponent,
// 1.05 to 1.7; saturated steam has about 1.135.
//
//	C = 3.948 sqrt(k (2/(k+1))^((k+1)/(k-1)))
//
// Source: SourceISO4126.
func FlowFactor(exponent float64) (float64, error) {
	if err := within.Range("isentropic exponent", exponent, 1.05, 1.7, ""); err != nil {
		return 0, err
	}
	return 3.948 * math.Sqrt(exponent*math.Pow(2/(exponent+1), (exponent+1)/(exponent-1))), nil
}

// SteamExponent is the isentropic exponent of saturated steam near 4 bar.
// Source: SourceISO4126.
const SteamExponent = 1.135

// SteamCapacity is the saturated steam in kg/h that a safety valve blows off at
// critical flow: flow area in mm2, 10 to 1e5, derated discharge coefficient 0.05
// to 1, relieving pressure 1.8 to 100 bar absolute, volume in m3/kg there.
//
//	Q = 0.2883 C A Kdr sqrt(p0/v)
//
// Below 1.8 bar the flow against the atmosphere is not critical. Source:
// SourceISO4126.
func SteamCapacity(areaMM2, coefficient, absoluteBar, volume float64) (float64, error) {
	if err := checkSeat(areaMM2, coefficient); err != nil {
		return 0, err
	}
	if err := within.Range("relieving pressure", absoluteBar, 1.8, 100, "bar abs"); err != nil {
		return 0, err
	}
	if err := within.Range("steam volume", volume, 0.01, 1.2, "m3/kg"); err != nil {
		return 0, err
	}
	c, err := FlowFactor(SteamExponent)
	if err != nil {
		return 0, err
	}
	return 0.2883 * c * areaMM2 * coefficient * math.Sqrt(absoluteBar/volume), nil
}

// SteamArea is the flow area in mm2 for saturated steam in kg/h, 0 to 1e6, at a
// relieving pressure of 1.2e5 to 1.03e7 Pa absolute and a discharge coefficient of
// 0.3 to 1.
//
//	A = 190.5 m/(p Kd), p in kPa
//
// Source: SourceSteamArea.
func SteamArea(rateKgH, relievingPa, coefficient float64) (float64, error) {
	if err := within.Range("steam rate", rateKgH, 0, 1e6, "kg/h"); err != nil {
		return 0, err
	}
	if err := within.Range("relieving pressure", relievingPa, 1.2e5, 1.03e7, "Pa abs"); err != nil {
		return 0, err
	}
	if err := within.Range("discharge coefficient", coefficient, 0.3, 1, ""); err != nil {
		return 0, err
	}
	return 190.5 * rateKgH / (relievingPa / 1000 * coefficient), nil
}

package insulation

import "example.org/tundish/check/calc/within"

// Limit is the greatest heat loss for an outer diameter.
type Limit struct {
	Outside float64 // mm
	Loss    float64 // W/m
}

var limits = [...]Limit{
	{17.2, 8.90},
	{21.3, 9.28},
	{26.9, 10.06},
	{33.7, 11.07},
	{42.4, 12.30},
	{48.3, 12.94},
	{60.3, 14.45},
	{76.1, 16.35},
	{88.9, 17.91},
	{114.3, 20.77},
	{139.7, 23.71},
	{168.3, 26.89},
}

// Limits returns the table of greatest heat losses of heating pipes. Source:
// SourceLimits.
func Limits() []Limit { return append([]Limit(nil), limits[:]...) }

// The temperatures in degC to which the table of limits belongs. Source:
// SourceLimits.
const (
	LimitInside  = 75.0
	LimitAmbient = 15.0
)

// LimitFor is the greatest heat loss in W/m of a heating pipe of an outer
// diameter of 17.2 to 168.3 mm, between printed sizes along a straight line.
// Source: SourceLimits.
func LimitFor(outsideMM float64) (float64, error) {
	if err := within.Range("outer diameter", outsideMM, limits[0].Outside, limits[len(limits)-1].Outside, "mm"); err != nil {
		return 0, err
	}
	i := 1
	for outsideMM > limits[i].Outside {
		i++
	}
	a, b := limits[i-1], limits[i]
	return a.Loss + (b.Loss-a.Loss)*(outsideMM-a.Outside)/(b.Outside-a.Outside), nil
}

// USThickness is the least thickness in inches at a water temperature of 105 to
// 200 degF and a nominal pipe size of 0.25 to 24 in.
//
//	to 140 degF: 1 in below 1.5 in, 1.5 in from there; above: 1.5 in and 2 in
//
// Source: SourceUS.
func USThickness(fahrenheit, nominalIn float64) (float64, error) {
	if err := within.Range("water temperature", fahrenheit, 105, 200, "degF"); err != nil {
		return 0, err
	}
	if err := within.Range("nominal size", nominalIn, 0.25, 24, "in"); err != nil {
		return 0, err
	}
	thick := 1.5
	if fahrenheit <= 140*(1+1e-9) {
		thick = 1
	}
	if nominalIn >= 1.5*(1-1e-9) {
		thick += 0.5
	}
	return thick, nil
}

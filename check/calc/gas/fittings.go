package gas

import (
	"example.org/tundish/check/calc/within"
	"example.org/tundish/check/cite"
)

// EquivalentLength is the length of straight pipe that loses what a fitting
// loses, in the unit of the bore.
//
//	L = n D
//
// The ratio n holds from 0 to 400, the bore from 0.001 to 2 m or the same in
// another unit. Source: SourceUSFittings.
func EquivalentLength(ratio, bore float64) (float64, error) {
	if err := within.Range("equivalent length in bores", ratio, 0, 400, ""); err != nil {
		return 0, err
	}
	if err := within.Range("bore", bore, leastBore, 2000, ""); err != nil {
		return 0, err
	}
	return ratio * bore, nil
}

// Ratio is the equivalent length of a kind of fitting in bores.
type Ratio struct {
	Fitting string
	Bores   float64
	Source  cite.Source
}

var ratios = [...]Ratio{
	{"45 deg elbow, screwed", 14, SourceUSFittings},
	{"90 deg elbow, screwed", 30, SourceUSFittings},
	{"tee to the branch, screwed", 60, SourceUSFittings},
	{"close return bend", 67, SourceUSFittings},
	{"90 deg elbow, welded, radius 1 bore", 16, SourceUSFittings},
	{"90 deg elbow, welded, radius 2 bores", 9, SourceUSFittings},
}

// Ratios returns the table of equivalent lengths in bores.
func Ratios() []Ratio { return append([]Ratio(nil), ratios[:]...) }

var steelFittings = [...]struct {
	nominal int     // DN
	length  float64 // m per bend or tee
}{
	{15, 0.5}, {20, 0.5}, {25, 1}, {32, 1}, {40, 1.5}, {50, 2}, {65, 2.5}, {80, 3.5}, {100, 5}, {125, 7}, {150, 8},
}

// SteelFitting is the equivalent length in m of one bend or tee in a steel pipe
// of a nominal size; other sizes are an error. Source: SourceSteelTable.
func SteelFitting(nominal int) (float64, error) {
	for i := range steelFittings {
		if steelFittings[i].nominal == nominal {
			return steelFittings[i].length, nil
		}
	}
	return 0, &within.Error{Name: "nominal size", Value: float64(nominal), Low: 15, High: 150, Unit: "(sizes of the table)"}
}

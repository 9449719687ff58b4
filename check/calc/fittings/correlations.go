package fittings

import (
	"math"

	"example.org/tundish/check/calc/within"
)

// TwoK is one fitting of Hooper's method.
type TwoK struct {
	Fitting string
	K1      float64 // K at Reynolds number 1
	KInf    float64 // K of a large fitting at infinite Reynolds number
}

var twoK = [...]TwoK{
	{"elbow 90 standard (r/D 1) screwed", 800, 0.40},
	{"elbow 90 standard (r/D 1) flanged or welded", 800, 0.25},
	{"elbow 90 long radius (r/D 1.5) all types", 800, 0.20},
	{"elbow 45 standard (r/D 1) all types", 500, 0.20},
	{"elbow 45 long radius (r/D 1.5) all types", 500, 0.15},
	{"elbow 180 standard (r/D 1) screwed", 1000, 0.60},
	{"elbow 180 standard (r/D 1) flanged or welded", 1000, 0.35},
	{"elbow 180 long radius (r/D 1.5) all types", 1000, 0.30},
	{"tee as elbow standard screwed", 500, 0.70},
	{"tee as elbow long radius screwed", 800, 0.40},
	{"tee as elbow standard flanged or welded", 800, 0.80},
	{"tee as elbow stub-in branch", 1000, 1.00},
	{"tee run screwed", 200, 0.10},
	{"valve gate full line size", 300, 0.10},
	{"valve globe standard", 1500, 4.00},
	{"valve globe angle or Y", 1000, 2.00},
	{"valve diaphragm weir", 1000, 2.00},
	{"valve butterfly", 800, 0.25},
	{"valve check lift", 2000, 10.00},
	{"valve check swing", 1500, 1.50},
	{"valve check tilting disc", 1000, 0.50},
}

// TwoKs returns the table of Hooper's method. Source: SourceHooper.
func TwoKs() []TwoK { return append([]TwoK(nil), twoK[:]...) }

// TwoKNamed finds a fitting of Hooper's table.
func TwoKNamed(fitting string) (TwoK, bool) {
	for i := range twoK {
		if twoK[i].Fitting == fitting {
			return twoK[i], true
		}
	}
	return TwoK{}, false
}

// K is the loss coefficient at a Reynolds number of 1 to 1e9 in a bore of 0.2
// to 80 in.
//
//	K = K1/Re + Kinf (1 + 1/D)
//
// Source: SourceHooper.
func (t TwoK) K(reynolds, boreIn float64) (float64, error) {
	if err := checkReynolds(reynolds); err != nil {
		return 0, err
	}
	if err := within.Range("bore", boreIn, 0.2, 80, "in"); err != nil {
		return 0, err
	}
	return t.K1/reynolds + t.KInf*(1+1/boreIn), nil
}

// ThreeK is one fitting of Darby's method.
type ThreeK struct {
	Fitting string
	K1      float64 // K at Reynolds number 1
	Ki      float64
	Kd      float64 // in^0.3
}

var threeK = [...]ThreeK{
	{"elbow 90 threaded standard (r/D 1)", 800, 0.14, 4.0},
	{"elbow 90 threaded long radius (r/D 1.5)", 800, 0.071, 4.2},
	{"elbow 90 flanged or welded (r/D 1)", 800, 0.091, 4.0},
	{"elbow 90 flanged or welded (r/D 2)", 800, 0.056, 3.9},
	{"elbow 90 flanged or welded (r/D 4)", 800, 0.066, 3.9},
	{"elbow 90 flanged or welded (r/D 6)", 800, 0.075, 4.2},
	{"elbow 45 threaded standard (r/D 1)", 500, 0.071, 4.2},
	{"elbow 45 long radius (r/D 1.5)", 500, 0.052, 4.0},
	{"elbow 180 threaded close return", 1000, 0.23, 4.0},
	{"elbow 180 flanged (r/D 1)", 1000, 0.12, 4.0},
	{"tee to branch threaded (r/D 1)", 500, 0.274, 4.0},
	{"tee to branch threaded (r/D 1.5)", 800, 0.14, 4.0},
	{"tee to branch flanged (r/D 1)", 800, 0.28, 4.0},
	{"tee to branch stub-in", 1000, 0.34, 4.0},
	{"tee run threaded (r/D 1)", 200, 0.091, 4.0},
	{"tee run flanged (r/D 1)", 150, 0.05, 4.0},
	{"valve gate standard", 300, 0.037, 3.9},
	{"valve ball standard", 300, 0.017, 3.5},
	{"valve globe standard", 1500, 1.7, 3.6},
	{"valve check swing", 1500, 0.46, 4.0},
	{"valve check lift", 2000, 2.85, 3.8},
}

// ThreeKs returns the table of Darby's method. Source: SourceDarby.
func ThreeKs() []ThreeK { return append([]ThreeK(nil), threeK[:]...) }

// ThreeKNamed finds a fitting of Darby's table.
func ThreeKNamed(fitting string) (ThreeK, bool) {
	for i := range threeK {
		if threeK[i].Fitting == fitting {
			return threeK[i], true
		}
	}
	return ThreeK{}, false
}

// K is the loss coefficient at a Reynolds number of 1 to 1e9 in a pipe of a
// nominal size of 0.25 to 80 in.
//
//	K = K1/Re + Ki (1 + Kd/NPS^0.3)
//
// Source: SourceDarby.
func (t ThreeK) K(reynolds, nominalIn float64) (float64, error) {
	if err := checkReynolds(reynolds); err != nil {
		return 0, err
	}
	if err := within.Range("nominal size", nominalIn, 0.25, 80, "in"); err != nil {
		return 0, err
	}
	return t.K1/reynolds + t.Ki*(1+t.Kd/math.Pow(nominalIn, 0.3)), nil
}

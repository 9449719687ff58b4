// Package pressuretest gives the pressures and times of pressure tests. It
// knows nothing of plants.
//
// A test that passes is no permission to fill, to let gas in or to fire. Air
// and gas store energy: a test with them needs its own assessment of the risk.
package pressuretest

import (
	"math"

	"example.org/tundish/check/calc/within"
	"example.org/tundish/check/cite"
)

// Sources of the formulas and numbers of this package.
var (
	SourceWater = cite.Source{
		Work: "water test of heating pipes in steel or copper, as in plumbing textbooks", Read: cite.Published,
		Note: "1.5 times the greatest working pressure; settle for 30 minutes",
	}
	SourceHold = cite.Source{
		Work: "time that a water test is held", Read: cite.Practice, Note: "an hour without a fall",
	}
	SourceEN14336 = cite.Source{Work: "EN 14336", Read: cite.Memory, Note: "1.3 times the greatest working pressure"}
	SourceSupply  = cite.Source{
		Work: "water regulations guidance on BS EN 806 and the Water Fittings Regulations", Read: cite.Published,
		Note: "wholesome water: 1.5 times the greatest working pressure by the regulations, 1.1 times that by the standard",
	}
	SourceUSGas = cite.Source{
		Work: "International Fuel Gas Code", Edition: "2018", Clause: "406.4.1", Read: cite.Published,
		Note: "1.5 times the greatest working pressure and at least 3 psi gauge",
	}
	SourceUSGasTime = cite.Source{
		Work: "International Fuel Gas Code", Edition: "2018", Clause: "406.4.2", Read: cite.Memory,
		Note: "half an hour for each 500 ft3 or part of it; 10 minutes below 10 ft3; never more than 24 hours",
	}
)

// Factors of the water test on the greatest working pressure. Sources:
// SourceWater, SourceEN14336, SourceSupply.
const (
	Usual      = 1.5
	EN14336    = 1.3
	SupplyPeak = 1.1 // on top of Usual, wholesome water by the standard
)

// Times of a water test in s. Sources: SourceWater, SourceHold.
const (
	Settle = 1800.0
	Hold   = 3600.0
)

// Water is the test pressure in bar for a greatest working pressure of 0.1 to
// 25 bar and a factor of 1 to 2.
//
//	p = factor x working
//
// Every part that is rated for less is taken off or shut off first. Sources:
// those of the factors.
func Water(workingBar, factor float64) (float64, error) {
	if err := within.Range("greatest working pressure", workingBar, 0.1, 25, "bar"); err != nil {
		return 0, err
	}
	if err := within.Range("factor of the test pressure", factor, 1, 2, ""); err != nil {
		return 0, err
	}
	return workingBar * factor, nil
}

// USGas is the test pressure in psi gauge of a US gas pipe with a greatest
// working pressure of 0.01 to 125 psi gauge.
//
//	p = max(1.5 x working, 3)
//
// Source: SourceUSGas.
func USGas(workingPsi float64) (float64, error) {
	if err := within.Range("greatest working pressure", workingPsi, 0.01, 125, "psi"); err != nil {
		return 0, err
	}
	return math.Max(1.5*workingPsi, 3), nil
}

// USGasTime is the least length in minutes of the test of a US gas pipe of a
// volume of 0 to 1e6 ft3.
//
//	10 below 10 ft3, else 30 for each 500 ft3 or part of it, at most 1440
//
// Source: SourceUSGasTime.
func USGasTime(volumeFt3 float64) (float64, error) {
	if err := within.Range("volume of the pipes", volumeFt3, 0, 1e6, "ft3"); err != nil {
		return 0, err
	}
	if volumeFt3 < 10 {
		return 10, nil
	}
	// The guard keeps a whole 500 ft3 whole.
	return math.Min(30*math.Ceil(volumeFt3/500*(1-1e-12)), 1440), nil
}

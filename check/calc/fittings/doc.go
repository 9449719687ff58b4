// Package fittings gives the loss coefficients K of bends, tees, valves,
// reducers, entrances and exits, and turns K, Kv and Cv into each other. It
// knows nothing of media or plants.
//
// A fitting loses K times the velocity head of the bore that the function
// names:
//
//	dp = K rho v^2/2
//
// Bores are in m, angles in degrees, flows in any one unit. Published methods
// differ by tens of per cent for one and the same fitting; the coefficient that
// the maker of a part measured comes before all of them.
package fittings

import "example.org/tundish/check/calc/within"

// The bores for which the methods are offered, in m.
const (
	leastBore = 0.005
	mostBore  = 2.0
)

func checkBore(bore float64) error {
	return within.Range("bore", bore, leastBore, mostBore, "m")
}

func checkReynolds(reynolds float64) error {
	return within.Range("Reynolds number", reynolds, 1, 1e9, "")
}

package gas

import "example.org/tundish/check/calc/friction"

// darcy is the Darcy friction factor: 64/Re up to Re 2000, Colebrook above.
func darcy(re, rough float64) float64 {
	if re <= 2000 {
		return 64 / re
	}
	return friction.Colebrook(re, rough)
}

package gas

import "math"

// darcy is the Darcy friction factor: 64/Re up to Re 2000, Colebrook above.
func darcy(re, rough float64) float64 {
	if re <= 2000 {
		return 64 / re
	}
	x := -2 * math.Log10(rough/3.7+5.74/math.Pow(re, 0.9))
	for range 20 {
		arg := rough/3.7 + 2.51*x/re
		step := (x + 2*math.Log10(arg)) / (1 + 2/math.Ln10*2.51/re/arg)
		x -= step
		if math.Abs(step) < 1e-14*x {
			break
		}
	}
	return 1 / (x * x)
}

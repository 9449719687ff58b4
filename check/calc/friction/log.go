package friction

import "math"

// logSteps cuts 1..2 into pieces of one 128th.
const logSteps = 128

// logs holds for the middle of each piece the number that brings it to 1 and the
// logarithm that this takes away.
var logs = func() (table [logSteps]struct{ scale, log float64 }) {
	for i := range table {
		scale := 1 / (1 + (float64(i)+0.5)/logSteps)
		table[i].scale, table[i].log = scale, -math.Log(scale)
	}
	return table
}()

// log is the natural logarithm of a number above 0 within 2e-16 of its value or of
// 1. Colebrook's equation asks for little else, and this takes half the time of
// the general one: a table brings the digits within 1/256 of 1, a series in that
// small rest does the others.
func log(v float64) float64 {
	bits := math.Float64bits(v)
	piece := &logs[bits>>45&(logSteps-1)]
	r := math.Float64frombits(bits&(1<<52-1)|1023<<52)*piece.scale - 1
	series := r * r * (-1./2 + r*(1./3+r*(-1./4+r*(1./5-r*(1./6)))))
	return float64(int(bits>>52)-1023)*math.Ln2 + (piece.log + (r + series))
}

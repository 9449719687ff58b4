package network

import "math"

// Limits of the friction law and the numbers that only steer the method.
const (
	laminarEnd     = 2000.0 // Re up to which the factor is 64/Re
	turbulentBegin = 4000.0 // Re from which it is Colebrook's
	mostReynolds   = 1e8    // end of the published chart of the law
	roughest       = 0.05   // relative roughness, end of the published chart

	startVelocity = 1.0  // m/s in every pipe at a cold start
	footVelocity  = 1e-3 // m/s under which a fitting's law is linear at its foot
	footShare     = 1e-3 // the same for a curve, as a part of its first or last flow
)

// twoOverLn10 turns 2 log10 into a natural logarithm.
const twoOverLn10 = 2 / math.Ln10

// pipeLoss finds the head lost in a pipe, friction and fittings, and its slope.
//
//	h = (f L/D + K) q|q|/(2 g A2)
//	f = 64/Re                                       Re <= 2000
//	1/sqrt f = -2 log10(k/(3.7 D) + 2.51/(Re sqrt f))   Re >= 4000
//	f linear in Re between the two                  2000 to 4000
//
// The bridge only keeps the loss continuous and rising; no published law holds
// there. Sources: SourceFriction, SourceColebrook.
func pipeLoss(l *link) (h, slope float64) {
	flow := math.Abs(l.q)
	re := flow * l.reynolds
	if re <= laminarEnd {
		return l.q * (l.laminar + l.minor*flow), l.laminar + 2*l.minor*flow
	}
	if re >= turbulentBegin {
		if l.root == 0 {
			l.root = rootGuess(re, l.rough)
		}
		x, t := colebrook(re, l.rough, l.root)
		l.root = x
		f := l.friction / (x * x)
		return (f + l.minor) * flow * l.q, 2 * flow * (f/(1+t) + l.minor)
	}
	if l.edge == 0 {
		x, _ := colebrook(turbulentBegin, l.rough, rootGuess(turbulentBegin, l.rough))
		l.edge = 1 / (x * x)
	}
	const foot = 64 / laminarEnd
	rise := (l.edge - foot) / (turbulentBegin - laminarEnd)
	f := foot + rise*(re-laminarEnd)
	return (l.friction*f + l.minor) * flow * l.q, flow * (l.friction*(2*f+rise*re) + 2*l.minor)
}

// rootGuess starts colebrook; its error is mended there.
func rootGuess(re, rough float64) float64 {
	return -twoOverLn10 * math.Log(rough/3.7+5.74/math.Pow(re, 0.9))
}

// colebrook solves F(x) = x + 2 log10(k/3.7D + 2.51 x/Re) = 0 for x = 1/sqrt f
// from a start, and returns t with which the slope of f Re2 is 2 f Re/(1+t).
// Each step is Newton's with Halley's correction for the curvature of F:
// F' = 1+t and F” = -t2 ln10/2. F is so nearly straight that the error after
// a step is under 0.002 times the cube of the step: a step under 2e-4 leaves
// the last bits only.
func colebrook(re, rough, start float64) (x, t float64) {
	a, b := rough/3.7, 2.51/re
	x = start
	for range 50 {
		inner := a + b*x
		t = twoOverLn10 * b / inner
		step := (x + twoOverLn10*math.Log(inner)) / (1 + t)
		step /= 1 + step*t*t/(2*twoOverLn10*(1+t))
		x -= step
		if math.Abs(step) < 2e-4 {
			break
		}
	}
	return x, t
}

// evaluate sets head lost and inverse slope of a link at its flow.
func (s *Solver) evaluate(l *link) {
	var slope float64
	switch {
	case l.held: // only asked for while valves leak
		l.h, slope = s.rest(l)+leakSlope*l.q, leakSlope
	case l.kind == pipeLink:
		l.h, slope = pipeLoss(l)
	case l.kind == fittingLink:
		l.h, slope = square(l.minor, l.q, l.small)
	default:
		l.h, slope = s.curve(l)
	}
	l.invert = 1 / slope
}

// rest is the head lost at no flow: below zero for a running pump.
func (s *Solver) rest(l *link) float64 {
	if l.kind == pumpLink {
		return s.segments[l.first].a * l.speed * l.speed
	}
	return 0
}

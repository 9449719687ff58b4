package network

import (
	"math"

	"example.org/tundish/check/calc/friction"
)

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
			l.root = friction.Start(re, l.rough)
		}
		x, t := friction.Root(re, l.rough, l.root)
		l.root = x
		f := l.friction / (x * x)
		return (f + l.minor) * flow * l.q, 2 * flow * (f/(1+t) + l.minor)
	}
	if l.edge == 0 {
		x, _ := friction.Root(turbulentBegin, l.rough, friction.Start(turbulentBegin, l.rough))
		l.edge = 1 / (x * x)
	}
	const foot = 64 / laminarEnd
	rise := (l.edge - foot) / (turbulentBegin - laminarEnd)
	f := foot + rise*(re-laminarEnd)
	return (l.friction*f + l.minor) * flow * l.q, flow * (l.friction*(2*f+rise*re) + 2*l.minor)
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

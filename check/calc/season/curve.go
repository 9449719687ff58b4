// Package season follows a cascade of units over the hours of a year: from a
// load-duration curve and the heat that each unit gives at least and at most it
// computes how many units run for how long, how long they run at their least
// rate, how often they start, and how much of the heat falls below a load. It
// knows nothing of plants.
//
// Loads are in W, times in s, heat in J. Every integral is exact for the
// straight pieces of the curve.
package season

import (
	"errors"
	"math"

	"example.org/tundish/check/calc/within"
	"example.org/tundish/check/cite"
)

// Sources of the formulas of this package.
var (
	SourceCurve = cite.Source{
		Work: "integral of a load-duration curve of straight pieces", Read: cite.Memory, Note: "geometry",
	}
	SourceSequence = cite.Source{
		Work: "sequence of modulating units that share the load alike", Read: cite.Memory,
		Note: "steady loads; what is switched while the load changes is not counted",
	}
	SourceCycling = cite.Source{
		Work: "heat balance of a cycling unit: on for C dT/(P - L), off for C dT/L", Read: cite.Memory,
		Note: "physics; the water between the switching points is mixed",
	}
	SourceEmitters = cite.Source{
		Work: "EN 442, output of emitters by the power of their excess temperature", Read: cite.Memory,
		Note: "exponent 1.3 of radiators; the flow follows the weather, the water flow stays",
	}
)

// Point is a point of a load-duration curve: the load that is reached or passed
// for so many seconds of the year.
type Point struct {
	Time float64 // s from the start of the curve
	Load float64 // W
}

// Curve is a load-duration curve: straight between points whose times rise and
// whose loads do not.
type Curve []Point

// ErrCurve is returned for points that are no load-duration curve.
var ErrCurve = errors.New("the points of a load-duration curve go on in time and never up in load")

const year = 8784 * 3600 // s, the longest year

// Check reports what keeps the points from being a curve: at least two, from 0
// to 8784 hours, loads of 0 to 1e9 W.
func (c Curve) Check() error {
	if len(c) < 2 || c[0].Time != 0 {
		return ErrCurve
	}
	for i, p := range c {
		if err := within.Range("time of a load", p.Time/3600, 0, year/3600, "h"); err != nil {
			return err
		}
		if err := within.Range("load", p.Load, 0, 1e9, "W"); err != nil {
			return err
		}
		if i > 0 && (p.Time <= c[i-1].Time || p.Load > c[i-1].Load) {
			return ErrCurve
		}
	}
	return nil
}

// Span is the time in s that the curve covers.
func (c Curve) Span() float64 { return c[len(c)-1].Time }

// Between is the time for which the load is at least low and less than high, and
// the heat that is asked for in it. A load that stands still at high counts
// above it. Source: SourceCurve.
//
//	t = sum over the pieces of (t1 - t0) (La - Lb)/(L0 - L1),  Q = t (La + Lb)/2
//
// with La and Lb the ends of the piece, cut to low and high.
func (c Curve) Between(low, high float64) (time, heat float64) {
	for i := 1; i < len(c); i++ {
		a, b := c[i-1], c[i]
		span := b.Time - a.Time
		if a.Load == b.Load {
			if a.Load >= low && a.Load < high {
				time, heat = time+span, heat+span*a.Load
			}
			continue
		}
		top, foot := math.Min(a.Load, high), math.Max(b.Load, low)
		if top <= foot {
			continue
		}
		t := span * (top - foot) / (a.Load - b.Load)
		time, heat = time+t, heat+t*(top+foot)/2
	}
	return time, heat
}

// Starts is how often a heat generator switches on while the load is at least
// low and less than high, where the least it gives is at least high: it stores
// the surplus in a capacity in J that its switching difference makes of the
// water. Source: SourceCycling.
//
//	n = integral of L (P - L)/(P C dT) dt,  on a straight piece
//	    [P L^2/2 - L^3/3]/(P C dT) by the fall of the load
func (c Curve) Starts(low, high, least, capacity float64) float64 {
	sum := 0.0
	for i := 1; i < len(c); i++ {
		a, b := c[i-1], c[i]
		span := b.Time - a.Time
		if a.Load == b.Load {
			if a.Load >= low && a.Load < high {
				sum += span * a.Load * (least - a.Load)
			}
			continue
		}
		top, foot := math.Min(a.Load, high), math.Max(b.Load, low)
		if top <= foot {
			continue
		}
		whole := func(l float64) float64 { return l * l * (least/2 - l/3) }
		sum += span / (a.Load - b.Load) * (whole(top) - whole(foot))
	}
	return sum / (least * capacity)
}

package network

import (
	"errors"
	"fmt"
	"math"
)

// segment is a piece of a curve: head lost = a + b q2 up to the flow end.
type segment struct {
	a, b  float64
	end   float64 // flow at the end of the piece; the law goes on beyond the last
	begin float64 // flow at its begin
}

// lossCurve appends the pieces of a loss curve and returns the flow under
// which the square law is made linear at its foot.
func (s *Solver) lossCurve(points []Point) (float64, error) {
	if len(points) == 0 {
		return 0, errors.New("the loss curve has no point")
	}
	var before Point // a loss curve starts at no flow and no loss
	for i, p := range points {
		if !finite(p.Flow) || !finite(p.Head) || p.Flow <= before.Flow || p.Head <= before.Head {
			return 0, fmt.Errorf("point %d of the loss curve, %g m at %g m3/s: flow and loss must be above 0 and rise", i+1, p.Head, p.Flow)
		}
		s.join(before, p, 1)
		before = p
	}
	return footShare * points[0].Flow, nil
}

// pumpCurve does the same for a pump, whose head is a loss below 0.
func (s *Solver) pumpCurve(points []Point) (float64, error) {
	if len(points) == 0 {
		return 0, errors.New("the pump curve has no point")
	}
	for i, p := range points {
		switch {
		case !finite(p.Flow) || !finite(p.Head) || p.Flow < 0:
			return 0, fmt.Errorf("point %d of the pump curve, %g m at %g m3/s: flow must be 0 or more", i+1, p.Head, p.Flow)
		case i > 0 && p.Flow <= points[i-1].Flow:
			return 0, fmt.Errorf("point %d of the pump curve, %g m at %g m3/s: flows must rise", i+1, p.Head, p.Flow)
		case i > 0 && p.Head > points[i-1].Head:
			return 0, fmt.Errorf("point %d of the pump curve, %g m at %g m3/s: a head that rises with flow gives no single answer", i+1, p.Head, p.Flow)
		}
	}
	last := points[len(points)-1]
	if last.Flow <= 0 || points[0].Head <= 0 {
		return 0, errors.New("the pump curve needs a point with flow above 0 and a first head above 0")
	}
	if len(points) == 1 {
		s.segments = append(s.segments, segment{a: -4 * last.Head / 3, b: last.Head / 3 / (last.Flow * last.Flow), end: 2 * last.Flow})
		return footShare * last.Flow, nil
	}
	for i := 1; i < len(points); i++ {
		s.join(points[i-1], points[i], -1)
	}
	return footShare * last.Flow, nil
}

// join appends the piece a + b q2 through two points; sign is -1 for heads
// that are gained.
func (s *Solver) join(p, q Point, sign float64) {
	b := sign * (q.Head - p.Head) / (q.Flow*q.Flow - p.Flow*p.Flow)
	s.segments = append(s.segments, segment{a: sign*p.Head - b*p.Flow*p.Flow, b: b, begin: p.Flow, end: q.Flow})
}

// curve finds the head lost and its slope at the flow of the link.
func (s *Solver) curve(l *link) (h, slope float64) {
	flow := math.Abs(l.q)
	pieces := s.segments[l.first : l.first+l.num]
	i := int(l.current - l.first)
	if l.kind == pumpLink && l.q < 0 {
		i = 0 // driven backwards: the first piece goes on, flagged in the result
	} else {
		for i > 0 && flow < pieces[i].begin*l.speed {
			i--
		}
		for i < len(pieces)-1 && flow > pieces[i].end*l.speed {
			i++
		}
	}
	l.current = l.first + int32(i)
	piece := &pieces[i]
	h, slope = square(piece.b, l.q, l.small)
	shift := piece.a * l.speed * l.speed
	if l.kind == lossLink && l.q < 0 {
		shift = -shift
	}
	if slope < l.least {
		slope = l.least
	}
	return h + shift, slope
}

// outside reports a flow beyond the points of the curve.
func (s *Solver) outside(l *link) bool {
	if l.num == 0 {
		return false
	}
	const guard = 1e-9 // equal to the last point is inside
	pieces := s.segments[l.first : l.first+l.num]
	low, high := pieces[0].begin*l.speed, pieces[l.num-1].end*l.speed
	if l.kind == lossLink {
		return math.Abs(l.q) > high*(1+guard)
	}
	return l.q < low-guard*high || l.q > high*(1+guard)
}

// square is b q|q| and its slope. Under the flow small the foot is
// b (small q/2 + q3/(2 small)), which joins with equal value and slope and
// keeps the slope above zero at no flow.
func square(b, q, small float64) (h, slope float64) {
	flow := math.Abs(q)
	if flow < small {
		return b * q * (small/2 + q*q/(2*small)), b * (small/2 + 3*q*q/(2*small))
	}
	return b * q * flow, 2 * b * flow
}

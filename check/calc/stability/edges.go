package stability

import (
	"cmp"
	"math"
	"slices"

	"example.org/tundish/check/calc/within"
)

// Point is a place on the floor in m.
type Point struct{ X, Y float64 }

// Edge is a line on the floor over which a frame may tip.
type Edge struct {
	At     Point // a point of the line
	Inward Point // of length 1, from the line to the side of the feet
}

// Inside is the distance in m from an edge to a point; below 0 the point lies
// outside the feet.
func (e *Edge) Inside(p Point) float64 {
	return (p.X-e.At.X)*e.Inward.X + (p.Y-e.At.Y)*e.Inward.Y
}

// Edges gives the lines over which a rigid frame on these feet may tip: the
// sides of the convex hull of the feet, counterclockwise. Three feet or more
// within 100 m that do not stand in one line; others are an error.
//
// Source: SourceStatics.
func Edges(feet []Point) ([]Edge, error) {
	for i := range feet {
		if err := within.Range("place of a foot", math.Max(math.Abs(feet[i].X), math.Abs(feet[i].Y)), 0, 100, "m"); err != nil {
			return nil, err
		}
	}
	h := hull(feet)
	if err := within.Range("feet that do not stand in one line", float64(len(h)), 3, math.Inf(1), ""); err != nil {
		return nil, err
	}
	out := make([]Edge, len(h))
	for i := range h {
		a, b := h[i], h[(i+1)%len(h)]
		l := math.Hypot(b.X-a.X, b.Y-a.Y)
		out[i] = Edge{At: a, Inward: Point{-(b.Y - a.Y) / l, (b.X - a.X) / l}}
	}
	return out, nil
}

// hull is the convex hull, counterclockwise, without points that stand on a side
// (the monotone chain).
func hull(points []Point) []Point {
	p := slices.Clone(points)
	slices.SortFunc(p, func(a, b Point) int { return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y)) })
	p = slices.Compact(p)
	if len(p) < 3 {
		return nil
	}
	turn := func(a, b, c Point) float64 { return (b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X) }
	var h []Point
	for pass := range 2 {
		from := len(h)
		for _, q := range p {
			for len(h) >= from+2 && turn(h[len(h)-2], h[len(h)-1], q) <= 1e-12 {
				h = h[:len(h)-1]
			}
			h = append(h, q)
		}
		h = h[:len(h)-1] // the first of the other half
		if pass == 0 {
			slices.Reverse(p)
		}
	}
	if len(h) < 3 {
		return nil
	}
	return h
}

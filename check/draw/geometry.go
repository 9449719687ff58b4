package draw

// box is a rectangle in px; y grows downwards.
type box struct{ x0, y0, x1, y1 float64 }

func around(x, y, w, h float64) box { return box{x - w/2, y - h/2, x + w/2, y + h/2} }

func (b box) hits(o box) bool { return b.x0 < o.x1 && o.x0 < b.x1 && b.y0 < o.y1 && o.y0 < b.y1 }

func (b box) grown(g float64) box { return box{b.x0 - g, b.y0 - g, b.x1 + g, b.y1 + g} }

func (b box) union(o box) box {
	return box{min(b.x0, o.x0), min(b.y0, o.y0), max(b.x1, o.x1), max(b.y1, o.y1)}
}

func (b box) mid() point { return point{(b.x0 + b.x1) / 2, (b.y0 + b.y1) / 2} }

// near is the point of the box that lies nearest to p.
func (b box) near(p point) point {
	return point{min(max(p.x, b.x0), b.x1), min(max(p.y, b.y0), b.y1)}
}

type point struct{ x, y float64 }

// segment is a straight piece of a line.
type segment struct{ a, b point }

// crosses reports whether the segment passes through the box (clipping against
// its four sides).
func (s segment) crosses(b box) bool {
	t0, t1 := 0.0, 1.0
	dx, dy := s.b.x-s.a.x, s.b.y-s.a.y
	clip := func(p, q float64) bool {
		if p == 0 {
			return q >= 0
		}
		r := q / p
		if p < 0 {
			t0 = max(t0, r)
		} else {
			t1 = min(t1, r)
		}
		return t0 <= t1
	}
	return clip(-dx, s.a.x-b.x0) && clip(dx, b.x1-s.a.x) && clip(-dy, s.a.y-b.y0) && clip(dy, b.y1-s.a.y)
}

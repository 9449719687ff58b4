package draw

import "math"

// dimension draws a dimension line between two points, moved aside by off px to
// the right of its direction, with ticks, witness lines and its text.
func (c *canvas) dimension(a, b point, off float64, text string) {
	if text == "" {
		return
	}
	d := math.Hypot(b.x-a.x, b.y-a.y)
	if d == 0 {
		return
	}
	ux, uy := (b.x-a.x)/d, (b.y-a.y)/d
	nx, ny := -uy, ux
	p, q := point{a.x + nx*off, a.y + ny*off}, point{b.x + nx*off, b.y + ny*off}
	c.thin("", p, q)
	for _, e := range [...][2]point{{a, p}, {b, q}} {
		s := math.Copysign(1, off)
		c.thin("", point{e[0].x + nx*s*4, e[0].y + ny*s*4}, point{e[1].x + nx*s*5, e[1].y + ny*s*5})
		c.thin("", point{e[1].x - 4*(ux+nx), e[1].y - 4*(uy+ny)}, point{e[1].x + 4*(ux+nx), e[1].y + 4*(uy+ny)})
	}
	m := around((p.x+q.x)/2, (p.y+q.y)/2, 2, 2)
	sides := []side{above, below}
	if math.Abs(uy) > math.Abs(ux) {
		sides = []side{left, right}
		if nx*off > 0 {
			sides = []side{right, left}
		}
	}
	c.label(m, nil, sides, text)
}

// rect draws a rectangle that stands for a part.
func (c *canvas) rect(b box, band Band, dash string, solid bool) {
	c.styled(band, dash, point{b.x0, b.y0}, point{b.x1, b.y0}, point{b.x1, b.y1}, point{b.x0, b.y1}, point{b.x0, b.y0})
	if solid {
		c.solid = append(c.solid, b)
	}
}

// ground draws a floor, wall or roof with its hatching on the side given by the
// sign of deep.
func (c *canvas) ground(x0, x1, y, deep float64) {
	c.styled(NotJudged, "", point{x0, y}, point{x1, y})
	for x := x0; x < x1; x += 14 {
		c.thin("", point{x + 8, y}, point{x, y + deep})
	}
}

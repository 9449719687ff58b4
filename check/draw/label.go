package draw

import (
	"fmt"
	"math"

	"example.org/tundish/check/plant"
)

// side is where a label likes to stand.
type side uint8

const (
	right side = iota
	left
	above
	below
)

// label is a wish: texts beside an object. The first line may link to the
// calculation of a part.
type label struct {
	at    box
	part  *plant.Part
	lines []string
	sides []side
	size  float64
}

const labelSize = 13

// label asks for texts beside a box. The part's name, with its signs, is the
// first line.
func (c *canvas) label(at box, part *plant.Part, sides []side, more ...string) {
	l := label{at: at, part: part, sides: sides, size: labelSize}
	if part != nil {
		l.lines = append(l.lines, part.Label()+c.signs(part))
	}
	for _, m := range more {
		if m != "" {
			l.lines = append(l.lines, m)
		}
	}
	if len(l.lines) > 0 {
		c.wants = append(c.wants, l)
	}
}

// line is label with everything in one line.
func (c *canvas) line(at box, part *plant.Part, sides []side, more ...string) {
	text := part.Label() + c.signs(part)
	for _, m := range more {
		if m != "" {
			text += ", " + m
		}
	}
	c.wants = append(c.wants, label{at: at, part: part, lines: []string{text}, sides: sides, size: labelSize})
}

// signs repeats in letters what line and color say.
func (c *canvas) signs(part *plant.Part) string {
	m := c.marks.Of(part)
	out := ""
	if m.Band == Over || m.Fault {
		out += " !"
	}
	if m.Open {
		out += " ?"
	}
	return out
}

func (l *label) dims() (w, h float64) {
	for i, s := range l.lines {
		w = max(w, TextWidth(s, l.size, i == 0 && l.part != nil))
	}
	return w, float64(len(l.lines)) * l.size * 1.15
}

// place finds a place for every label. Labels stand at their object where there
// is room; else they move away and a thin line leads to it.
func (c *canvas) place() {
	for i := range c.wants {
		l := &c.wants[i]
		w, h := l.dims()
		best, cost := c.beside(l, w, h)
		if cost >= far {
			best = c.away(l, w, h)
			from, to := best.near(l.at.mid()), l.at.near(best.mid())
			fmt.Fprintf(&c.lines, `<path d="%s" fill="none" stroke="#444444" stroke-width="0.6"/>`+"\n", path([]point{from, to}))
			c.segs = append(c.segs, segment{from, to})
		}
		c.put(l, best)
	}
	c.wants = nil
}

const (
	far      = 1e6
	labelGap = 4
)

func (c *canvas) beside(l *label, w, h float64) (best box, cost float64) {
	cost = far
	try := func(x, y, extra float64) {
		b := box{x, y, x + w, y + h}
		if k := c.cost(b) + extra; k < cost {
			best, cost = b, k
		}
	}
	a, m := l.at, l.at.mid()
	for i, s := range l.sides {
		e := 0.1 * float64(i)
		for gap := float64(labelGap); gap <= 16; gap += 6 {
			for _, shift := range [...]float64{0, -0.5, 0.5, -1, 1} {
				k := e + math.Abs(shift)*0.05 + gap*0.01
				switch s {
				case right:
					try(a.x1+gap, m.y-h/2+shift*(h+a.y1-a.y0)/2, k)
				case left:
					try(a.x0-gap-w, m.y-h/2+shift*(h+a.y1-a.y0)/2, k)
				case above:
					try(m.x-w/2+shift*(w+a.x1-a.x0)/2, a.y0-gap-h, k)
				case below:
					try(m.x-w/2+shift*(w+a.x1-a.x0)/2, a.y1+gap, k)
				}
			}
		}
	}
	return best, cost
}

// away looks in growing rings around the object. It ends, because the drawing
// is finite and the rings are not.
func (c *canvas) away(l *label, w, h float64) box {
	m := l.at.mid()
	for r := 20.0; ; r += 8 {
		best, cost := box{}, far
		for k := range 24 {
			a := float64(k) * math.Pi / 12
			b := around(m.x+math.Cos(a)*(r+w/2), m.y+math.Sin(a)*(r+h/2), w, h)
			if v := c.cost(b); v < cost {
				best, cost = b, v
			}
		}
		if cost < far {
			return best
		}
	}
}

// cost is what a label at b covers: nothing solid ever, lines where it must.
func (c *canvas) cost(b box) float64 {
	for _, s := range c.solid {
		if b.grown(1.5).hits(s) {
			return far
		}
	}
	k := 0.0
	for _, s := range c.segs {
		if s.crosses(b) {
			k++
		}
	}
	return k
}

func (c *canvas) put(l *label, b box) {
	fmt.Fprintf(&c.texts, `<rect x="%s" y="%s" width="%s" height="%s" fill="#ffffff" fill-opacity="0.85"/>`+"\n", num(b.x0-1), num(b.y0), num(b.x1-b.x0+2), num(b.y1-b.y0))
	for i, s := range l.lines {
		link, bold := "", false
		if i == 0 && l.part != nil {
			link, bold = Anchor(l.part.Address()), true
		}
		c.text(b.x0, b.y0+l.size*(1.15*float64(i)+0.9), l.size, bold, link, s)
	}
	c.solid = append(c.solid, b)
}

package draw

import (
	"fmt"

	"example.org/tundish/check/plant"
)

// flues draws the common flue above the units, its riser and terminal.
func (s *schematic) flues() {
	for k, f := range s.p.ByKind("flue") {
		h, riser, term := f.Child("flue-header"), f.Child("riser"), f.Child("terminal")
		var xs []float64
		for _, c := range f.Children("connector") {
			if ref, ok := c.Ref("from"); ok {
				if x, ok := s.unitAt[ref.Part]; ok {
					xs = append(xs, x+portOffset)
				}
			}
		}
		if len(xs) == 0 {
			continue
		}
		x0, x1 := xs[0], xs[0]
		for _, x := range xs {
			x0, x1 = min(x0, x), max(x1, x)
		}
		end := x1
		if h != nil {
			x0, end = x0-40, s.right+30+60*float64(k)
			s.pipe(h, flueLine, point{x0, flueY}, point{end, flueY})
			s.tag(flueLine, x0+14, flueY)
			s.label(around((x0+x1)/2, flueY, 60, 8), h, []side{above, left}, asWritten(h.Get("size")), fall(h))
		}
		top := flueY - 70
		if riser != nil {
			s.pipe(riser, flueLine, point{end, flueY}, point{end, top})
			s.label(around(end, flueY-36, 6, 20), riser, []side{right, left}, asWritten(riser.Get("size")), asWritten(riser.Get("length")))
		}
		if term != nil {
			b := s.sym("terminal", term, end, top-11, 0)
			s.label(b, term, []side{right, above}, asWritten(term.Get("place")))
		}
		if t := s.flueTrap(f); t != nil && h != nil {
			s.pipe(t, condensateLine, point{x0, flueY}, point{trapX, flueY}, point{trapX, drainY + 84})
			b := s.sym("trap", t, trapX, flueY+50, 0)
			s.label(b, t, []side{left, right}, seal(t))
		}
	}
}

func fall(part *plant.Part) string {
	v := part.Get("falls")
	if !v.Known() {
		return "fall not stated"
	}
	to := ""
	if ref, ok := part.Ref("towards"); ok {
		to = " to " + ref.Part.Label()
	}
	return "falls " + asWritten(v) + to
}

func seal(part *plant.Part) string {
	if t := asWritten(part.Get("seal")); t != "" {
		return "seal " + t
	}
	return ""
}

func (s *schematic) flueTrap(f *plant.Part) *plant.Part {
	for _, t := range s.p.ByKind("flue-trap") {
		for _, r := range t.Refs("from") {
			if r.Part.Owner == f {
				return t
			}
		}
	}
	return nil
}

func (s *schematic) condensateMain() *plant.Part {
	for _, c := range s.p.ByKind("condensate-pipe") {
		if refersKind(c, "from", "unit") {
			return c
		}
	}
	return nil
}

// drains draws the condensate from the units to the drain.
func (s *schematic) drains() {
	block := s.p.Block("condensate")
	if block == nil || len(s.x) == 0 {
		return
	}
	y := drainY + 60
	if c := s.condensateMain(); c != nil {
		s.pipe(c, condensateLine, point{s.x[len(s.x)-1], drainY}, point{drainX, drainY}, point{drainX, y})
		s.tag(condensateLine, drainX+30, drainY)
		s.label(around(trapX, drainY+30, 4, 30), c, []side{left, right}, asWritten(c.Get("size")), fall(c))
	}
	for _, n := range block.Parts {
		name := ""
		switch n.Kind {
		case "neutraliser":
			name = "neutralise"
		case "condensate-pump":
			name = "pump"
		}
		if name == "" || n.First().Absent() {
			continue
		}
		s.pipe(nil, condensateLine, point{drainX, y}, point{drainX, y + 60})
		b := s.sym(name, n, drainX, y+26, 0)
		s.label(b, n, []side{left, right}, asWritten(n.First()))
		y += 60
	}
	s.pipe(nil, condensateLine, point{drainX, y}, point{drainX, y + 24})
	for _, g := range block.Children("gully") {
		b := s.sym("gully", g, drainX, y+30, 0)
		s.label(b, g, []side{left, right, below}, asWritten(g.Get("kind")))
	}
}

// plan shows where the units stand: in line, back to back or round a corner.
func (s *schematic) plan() {
	rows := s.p.ByKind("row")
	if len(rows) == 0 {
		return
	}
	cell := 26.0
	for _, u := range s.units {
		cell = max(cell, TextWidth(u.Label(), 9, false)+10)
	}
	x0, y0 := 20.0, 24.0
	s.text(x0, y0, labelSize, true, "", "Plan, not to scale: "+s.layout())
	y0 += 12
	put := func(u *plant.Part, x, y float64) {
		st := strokes[s.marks.Of(u).Band]
		fmt.Fprintf(&s.syms, `<rect x="%s" y="%s" width="%s" height="%s" fill="#ffffff" stroke="%s" stroke-width="%s"/>`+"\n", num(x), num(y), num(cell-4), num(cell-4), st.color, num(min(st.width, 3)))
		w := TextWidth(u.Label(), 9, false)
		s.text(x+(cell-4-w)/2, y+14, 9, false, Anchor(u.Address()), u.Label())
		s.solid = append(s.solid, box{x, y, x + cell - 4, y + cell - 4})
		s.cover(box{x, y, x + cell, y + cell})
	}
	n := 0
	for k, row := range rows {
		for i, r := range row.Refs("units") {
			if r.Part.Kind != "unit" {
				continue
			}
			x, y := x0+float64(i)*cell, y0+float64(k)*cell
			if s.layout() == "l-shaped" && k > 0 {
				x, y = x0+float64(n)*cell, y0+float64(i)*cell
			}
			put(r.Part, x, y)
		}
		if k == 0 {
			n = len(row.Refs("units"))
		}
	}
}

package draw

import (
	"strings"

	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
)

// side draws the end view: depth, the units' offset and the free depth before
// them, and the height of the room.
func (e *elevation) side(x float64) {
	depth := e.frame.Get("depth")
	if !depth.Known() || len(e.units) == 0 {
		e.note("The depth of the frame is not stated; there is no end view.")
		return
	}
	rows := e.p.ByKind("row")
	fronts := e.fronts()
	back := e.layout() == "back-to-back"
	left := 0.0
	if back && len(rows) > 1 {
		left = fronts[rows[1]]
	}
	x0 := x + left*perMeter
	x1 := x0 + depth.Num*perMeter
	top := e.y(e.high)
	e.rect(box{x0, top, x1, e.floor - 12}, e.marks.Of(e.frame).Band, "", false)
	for _, f := range [...]float64{x0 + 6, x1 - 6} {
		e.styled(NotJudged, "", point{f, e.floor - 12}, point{f, e.floor - 3})
		e.styled(NotJudged, "", point{f - 6, e.floor - 2}, point{f + 6, e.floor - 2})
	}
	end := x1
	if len(rows) > 0 {
		end = max(end, e.sideUnit(rows[0], x1, -1, fronts[rows[0]]))
	}
	start := x0
	if back && len(rows) > 1 {
		start = min(start, e.sideUnit(rows[1], x0, 1, fronts[rows[1]]))
	}
	e.ground(start-30, end+30, e.floor, 8)
	e.label(around((x0+x1)/2, e.floor+14, 4, 4), nil, []side{below}, "end view")
	e.dimension(point{x0, e.floor}, point{x1, e.floor}, 46, asWritten(depth)+" over the feet")
	e.center(x0, x1)
	if v := e.p.Block("room").Child("size").Get("high"); v.Known() && v.Num > e.high && v.Num < 12 {
		e.ground(start-30, end+30, e.y(v.Num), -8)
		e.dimension(point{end + 20, e.floor}, point{end + 20, e.y(v.Num)}, 40, "room "+asWritten(v))
	}
}

// fronts are the free depths before the rows in m.
func (e *elevation) fronts() map[*plant.Part]float64 {
	out := map[*plant.Part]float64{}
	for _, f := range e.p.ByKind("front") {
		v := f.Get("clearance")
		for _, r := range f.Subjects() {
			if v.Known() && v.Num < 10 {
				out[r.Part] = v.Num
			}
		}
	}
	return out
}

// sideUnit draws the unit of a row in the end view; inward is the direction
// from the feet at x to the middle. It gives the outermost x it used.
func (e *elevation) sideUnit(row *plant.Part, x, inward, front float64) float64 {
	refs := row.Refs("units")
	if len(refs) == 0 || refs[0].Part.Kind != "unit" {
		return x
	}
	u := refs[0].Part
	_, h, d, ok := size(u)
	off := e.frame.Get("offset")
	at := d / 2
	dash := ""
	if off.Known() {
		at = off.Num
	}
	if !off.Known() || !ok {
		dash = "6 4"
		e.note("Where the units hang over the depth of the frame is not stated; they are drawn flush with the feet, dashed.")
	}
	hung, _ := e.hung(h)
	c := x + inward*at*perMeter
	b := around(c, e.y(hung), d*perMeter, h*perMeter)
	e.rect(b, e.marks.Of(u).Band, dash, false)
	w := TextWidth(row.Name, labelSize, true)
	if w < d*perMeter-4 {
		e.text(c-w/2, e.y(hung)+4, labelSize, true, Anchor(row.Address()), row.Name)
	}
	if off.Known() {
		e.dimension(point{min(x, c), e.floor - 60}, point{max(x, c), e.floor - 60}, 0.01, asWritten(off))
	}
	face := c - inward*d/2*perMeter
	if front <= 0 {
		return face
	}
	wall := face - inward*front*perMeter
	e.thin("", point{wall, e.floor}, point{wall, e.y(e.high)})
	for y := e.y(e.high); y < e.floor-8; y += 14 {
		e.thin("", point{wall, y + 8}, point{wall - inward*7, y})
	}
	for _, f := range e.p.ByKind("front") {
		for _, r := range f.Subjects() {
			if r.Part == row {
				y := e.floor - 30
				e.dimension(point{min(face, wall), y}, point{max(face, wall), y}, 0.01, asWritten(f.Get("clearance"))+" free")
			}
		}
	}
	return wall
}

// center marks the center of gravity of the empty frame.
func (e *elevation) center(x0, x1 float64) {
	at := e.frame.Child("mass").Get("at")
	if !at.Known() {
		return
	}
	x, y := (x0+x1)/2, e.y(at.Num)
	e.thin("", point{x - 10, y}, point{x + 10, y})
	e.thin("", point{x, y - 10}, point{x, y + 10})
	e.styled(NotJudged, "", point{x - 6, y}, point{x, y - 6}, point{x + 6, y}, point{x, y + 6}, point{x - 6, y})
	e.label(around(x, y, 20, 20), nil, []side{above, below, right}, "empty frame", asWritten(e.frame.Child("mass").Get("mass")))
}

// masses lists the stated masses and what the results say of the frame.
func (e *elevation) masses(r *solve.Results) {
	var out []string
	for _, u := range e.units {
		if v := u.Child("mass").Get("mass"); v.Known() {
			out = append(out, u.Label()+" "+asWritten(v))
		}
	}
	if v := e.frame.Child("mass").Get("mass"); v.Known() {
		out = append(out, "empty frame "+asWritten(v))
	}
	for _, s := range e.p.ByKind("section") {
		t := s.Label() + " " + asWritten(s.Get("length"))
		if v := s.Get("mass"); v.Known() {
			t += " " + asWritten(v)
		}
		out = append(out, t)
	}
	if len(out) > 0 {
		e.notes = append(e.notes, "Stated: "+strings.Join(out, ", ")+".")
	}
	if r == nil {
		return
	}
	var found []string
	r.Of(e.frame, func(q *solve.Quantity) {
		name := strings.NewReplacer("-", " ", ".", ", ").Replace(strings.TrimPrefix(q.Path(), e.frame.Address()+"."))
		if q.Known() {
			found = append(found, name+" "+printed(e.p, q))
		} else {
			found = append(found, name+" not known, needs "+q.Missing)
		}
	})
	if len(found) > 0 {
		e.notes = append(e.notes, "Computed: "+strings.Join(found, "; ")+".")
	}
}

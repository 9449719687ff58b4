package draw

import (
	"fmt"
	"strings"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

// perMeter is the scale of the elevation in px by metre.
const perMeter = 130.0

// elevation draws the frame to scale: a front view of each row and an end view.
type elevation struct {
	*canvas
	*topology
	frame *plant.Part
	floor float64 // y of the floor
	high  float64 // of the frame, m
	pitch float64
	notes []string
}

// Elevation draws the frame to scale with its units, headers, feet, dimension
// lines and masses. What the text does not state is drawn dashed in a usual
// place and named in the notes.
func Elevation(p *plant.Plant, r *solve.Results, rep *check.Report) []byte {
	e := &elevation{canvas: newCanvas(MarksOf(rep)), topology: newTopology(p), frame: p.One("frame"), floor: 500}
	name := Title("Elevation of the frame", p)
	if e.frame == nil {
		e.label(around(0, 0, 2, 2), nil, []side{right}, "No frame is stated.")
		return e.finish(name, "No frame is stated.", nil, nil)
	}
	e.measures()
	x := 0.0
	for _, row := range p.ByKind("row") {
		x = e.front(row, x) + 230
	}
	e.side(x)
	e.masses(r)
	about := "Elevation of the frame to scale, with units, headers, feet, dimensions and masses."
	return e.finish(name, about, append([]string{"To scale; lengths as stated."}, e.notes...), nil)
}

func (e *elevation) note(format string, a ...any) {
	s := fmt.Sprintf(format, a...)
	for _, n := range e.notes {
		if n == s {
			return
		}
	}
	e.notes = append(e.notes, s)
}

func (e *elevation) measures() {
	e.high = 1.9
	if v := e.frame.Get("height"); v.Known() && v.Num > 0 {
		e.high = v.Num
	} else {
		e.note("The height of the frame is not stated; it is drawn dashed.")
	}
	if v := e.frame.Get("pitch"); v.Known() && v.Num > 0 {
		e.pitch = v.Num
		return
	}
	e.pitch = 0.7
	for _, u := range e.units {
		if w := u.Child("size").Get("wide"); w.Known() {
			e.pitch = max(e.pitch, w.Num+0.05)
		}
	}
	e.note("The pitch of the units is not stated; they are drawn beside each other.")
}

// size gives width, height and depth of a unit in m; ok is false where its type
// does not state them.
func size(u *plant.Part) (w, h, d float64, ok bool) {
	s := u.Child("size")
	a, b, c := s.Get("wide"), s.Get("high"), s.Get("deep")
	if a.Known() && b.Known() && c.Known() {
		return a.Num, b.Num, c.Num, true
	}
	return 0.55, 0.9, 0.5, false
}

// hung is the height of a unit's center in m.
func (e *elevation) hung(h float64) (at float64, stated bool) {
	if v := e.frame.Get("hang-height"); v.Known() {
		return v.Num, true
	}
	e.note("The height at which the units hang is not stated; they are drawn with their tops at the top of the frame.")
	return max(e.high-h/2, h/2+0.3), false
}

func (e *elevation) y(m float64) float64 { return e.floor - m*perMeter }

// front draws one row from x on and gives its right end.
func (e *elevation) front(row *plant.Part, x float64) float64 {
	var units []*plant.Part
	for _, r := range row.Refs("units") {
		if r.Part.Kind == "unit" {
			units = append(units, r.Part)
		}
	}
	if len(units) == 0 {
		return x
	}
	long := float64(len(units)) * e.pitch
	if sum, all := e.sections(); all && len(e.p.ByKind("row")) == 1 && sum >= long-1e-9 {
		long = sum
	} else if len(e.p.ByKind("row")) > 1 {
		e.note("The text does not say which section stands under which row; each row is drawn as long as its units with their pitch.")
	}
	x0, x1 := x, x+long*perMeter
	e.ground(x0-50, x1+50, e.floor, 8)
	dash := ""
	if !e.frame.Get("height").Known() {
		dash = "6 4"
	}
	top := e.y(e.high)
	e.rect(box{x0, top, x1, e.floor - 12}, e.marks.Of(e.frame).Band, dash, false)
	feet := e.feet(x0, x1, len(units))
	e.label(around((x0+x1)/2, e.floor+14, 4, 4), row, []side{below}, "front view")
	first := x0 + (long-float64(len(units)-1)*e.pitch)/2*perMeter
	for i, u := range units {
		e.frontUnit(u, first+float64(i)*e.pitch*perMeter, i == len(units)-1, x1)
	}
	e.frontHeaders(x0, x1, units)
	e.dimension(point{x0, e.floor}, point{x0, top}, -34, asWritten(e.frame.Get("height")))
	if len(units) > 1 && e.frame.Get("pitch").Known() {
		e.dimension(point{first, top}, point{first + e.pitch*perMeter, top}, -40, asWritten(e.frame.Get("pitch")))
	}
	if e.frame.Get("pitch").Known() || long > float64(len(units))*e.pitch {
		e.dimension(point{x0, top}, point{x1, top}, -74, inUnit(long, e.frame.Get("height")))
	}
	if feet != "" {
		e.label(around(x0+16, e.floor-4, 24, 12), nil, []side{below}, feet)
	}
	return x1
}

// inUnit prints a length in the unit that another value was written in.
func inUnit(meters float64, like plant.Value) string {
	unit := asUnit(like)
	if unit == "" {
		unit = "m"
	}
	return lang.In(meters, unit)
}

func lookup(symbol string) bool {
	u, ok := lang.LookupUnit(symbol)
	return ok && u.Dim == lang.Length
}

// sections sums the stated lengths of the sections.
func (e *elevation) sections() (sum float64, all bool) {
	list := e.p.ByKind("section")
	all = len(list) > 0
	for _, s := range list {
		v := s.Get("length")
		all = all && v.Known()
		sum += v.Num
	}
	return sum, all
}

func (e *elevation) feet(x0, x1 float64, units int) string {
	f := e.frame.Child("feet")
	v := f.Get("count")
	if !v.Known() {
		e.note("The number of feet is not stated; none are drawn.")
		return ""
	}
	share := v.Num / 2 // two lines of feet
	if e.layout() == "l-shaped" && len(e.units) > 0 {
		share = v.Num / 2 * float64(units) / float64(len(e.units))
	}
	n := min(max(int(share+0.5), 2), 40)
	for i := range n {
		x := x0 + 6 + (x1-x0-12)*float64(i)/float64(n-1)
		e.styled(NotJudged, "", point{x, e.floor - 12}, point{x, e.floor - 3})
		e.styled(NotJudged, "", point{x - 6, e.floor - 2}, point{x + 6, e.floor - 2})
	}
	out := lang.Num(v.Num, 3) + " feet in all"
	for _, w := range [...]string{"adjustable", "anchored", "locked", "pads"} {
		if f.Has(w) {
			out += ", " + w
		}
	}
	return out
}

func (e *elevation) frontUnit(u *plant.Part, x float64, last bool, edge float64) {
	w, h, _, ok := size(u)
	at, stated := e.hung(h)
	b := around(x, e.y(at), w*perMeter, h*perMeter)
	dash := ""
	if !ok {
		dash = "6 4"
		e.note("The size of %s is not stated; it is drawn dashed.", u.Label())
	} else if !stated {
		dash = "6 4"
	}
	e.rect(b, e.marks.Of(u).Band, dash, false)
	mass := u.Child("mass")
	weight := "mass not stated"
	if v := mass.Get("mass"); v.Known() {
		weight = asWritten(v)
		if s := mass.Get("state"); s.Known() {
			weight += " " + s.Word
		}
	}
	name := u.Label() + e.signs(u)
	for i, s := range [...]string{name, weight} {
		bold, link := i == 0, ""
		if bold {
			link = Anchor(u.Address())
		}
		size := float64(labelSize)
		if wide := TextWidth(s, size, bold); wide > w*perMeter-6 {
			size *= (w*perMeter - 6) / wide
		}
		e.text(x-TextWidth(s, size, bold)/2, e.y(at)-8+float64(i)*16, size, bold, link, s)
	}
	if last && ok {
		e.dimension(point{edge, b.y1}, point{edge, b.y0}, 26, inUnit(h, u.Child("size").Get("high")))
		if stated {
			e.dimension(point{edge, e.floor}, point{edge, e.y(at)}, 84, asWritten(e.frame.Get("hang-height"))+" to center")
		}
		e.dimension(point{b.x0, b.y0}, point{b.x1, b.y0}, -14, inUnit(w, u.Child("size").Get("wide")))
	}
}

// frontHeaders draws the headers under the units with their true thickness.
func (e *elevation) frontHeaders(x0, x1 float64, units []*plant.Part) {
	low := e.high
	for _, u := range units {
		_, h, _, _ := size(u)
		at, _ := e.hung(h)
		low = min(low, at-h/2)
	}
	for i, h := range [...]*plant.Part{e.flow, e.ret} {
		if h == nil {
			continue
		}
		level := 0
		switch {
		case h.Get("level").Is("lower"):
			level = 1
		case !h.Get("level").Known():
			level = i
		}
		at := max(low*0.72-float64(level)*low*0.36, 0.15)
		thick := 0.1
		if v := h.Get("size"); v.Known() && v.Num > 0.01 && v.Num < 0.6 {
			thick = v.Num
		}
		b := box{x0 + 8, e.y(at + thick/2), x1 - 8, e.y(at - thick/2)}
		e.rect(b, e.marks.Of(h).Band, "6 4", false)
		e.thin("12 3 2 3", point{b.x0 - 14, e.y(at)}, point{b.x1 + 14, e.y(at)})
		e.line(box{b.x0, b.y0, b.x0 + 160, b.y1}, h, []side{above, below}, asWritten(h.Get("size")), asWritten(h.Get("level")))
		e.note("The heights of the headers are not stated; they are drawn dashed, in their thickness, the upper one over the lower.")
	}
}

// asUnit is the unit in which a length was written; empty without one.
func asUnit(v plant.Value) string {
	if f := strings.Fields(asWritten(v)); len(f) > 0 && lookup(f[len(f)-1]) {
		return f[len(f)-1]
	}
	return ""
}

package draw

import (
	"fmt"
	"math"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

// How much steeper than true the falls of the flue are drawn, and its measures
// in px.
const (
	steeper     = 4.0
	headerWidth = 118.0 // from entry to entry
	riserShown  = 230.0 // drawn height of a riser, broken where it is longer
	flueHeight  = 640.0
)

// flueDrawing draws one flue after the other.
type flueDrawing struct {
	*canvas
	*topology
	res   *solve.Results
	notes []string
}

// Flue draws each flue from the units to the terminal with its falls, drawn
// steeper than they are, its traps, classes and pressures.
func Flue(p *plant.Plant, r *solve.Results, rep *check.Report) []byte {
	d := &flueDrawing{canvas: newCanvas(MarksOf(rep)), topology: newTopology(p), res: r}
	name := Title("Flue and its falls", p)
	flues := p.ByKind("flue")
	if len(flues) == 0 {
		d.label(around(0, 0, 2, 2), nil, []side{right}, "No flue is stated.")
		return d.finish(name, "No flue is stated.", nil, nil)
	}
	for i, f := range flues {
		d.one(f, flueHeight*float64(i))
	}
	notes := append([]string{fmt.Sprintf("Not to scale. Falls are drawn %s times as steep as they are; arrows point downhill; a dashed piece has no stated fall.", num(steeper))}, d.notes...)
	return d.finish(name, "The flue from the units to the terminal with its falls, traps, classes and pressures.", notes, []service{flueLine, condensateLine})
}

// slope of a piece as stated: positive for a fall, ok false where nothing says.
func slope(part *plant.Part) (float64, bool) {
	v := part.Get("falls")
	if !v.Known() || math.Abs(v.Num) > 1 {
		return 0, false
	}
	return v.Num, true
}

// towards reports whether a piece falls towards a part or a part of that kind.
func towards(part *plant.Part, kind string) bool { return refersKind(part, "towards", kind) }

func (d *flueDrawing) value(part *plant.Part, name string, c solve.Case, before string) string {
	if d.res == nil || part == nil {
		return ""
	}
	q := d.res.Get(part, name, c)
	switch {
	case q == nil:
		return ""
	case !q.Known():
		return before + "not known"
	}
	return before + printed(d.p, q)
}

// entries are the connectors in the order in which they enter the header.
func entries(f *plant.Part) []*plant.Part {
	var out []*plant.Part
	seen := map[*plant.Part]bool{}
	for _, r := range f.Child("entry-order").Refs("units") {
		if c := linked(f, "connector", "from", r.Part); c != nil && !seen[c] {
			seen[c] = true
			out = append(out, c)
		}
	}
	for _, c := range f.Children("connector") {
		if !seen[c] {
			out = append(out, c)
		}
	}
	return out
}

func (d *flueDrawing) one(f *plant.Part, y float64) {
	h, riser, term := f.Child("flue-header"), f.Child("riser"), f.Child("terminal")
	list := entries(f)
	n := max(len(list), 1)
	x0, x1 := 60.0, 60+headerWidth*float64(n)+60
	base := y + 340
	// Downhill is towards the dead end unless the text names the riser's side.
	fall, known := slope(h)
	low := -1.0
	if towards(h, "riser") || towards(h, "run") {
		low = 1
	}
	drawn := math.Min(math.Max(fall*steeper, -0.35), 0.35)
	if pl := x1 - x0; math.Abs(drawn)*pl > 170 {
		drawn = math.Copysign(170/pl, drawn)
		d.notes = append(d.notes, "The fall of "+h.Label()+" is drawn less steep than the connectors', to keep the drawing low.")
	}
	at := func(x float64) float64 { // y of the header; the middle stays at base
		return base + low*drawn*(x-(x0+x1)/2)
	}
	if h != nil {
		dash := ""
		if !known {
			dash = "6 4"
		}
		d.styled(d.marks.Of(h).Band, dash, point{x0, at(x0)}, point{x1, at(x1)})
		d.label(around((x0+x1)/2, at((x0+x1)/2)-8, 200, 14), h, []side{above}, d.facts(h)...)
		if known && fall != 0 {
			dir := low * math.Copysign(1, fall)
			d.arrow(point{(x0+x1)/2 - dir*40, at((x0+x1)/2-dir*40) - 14}, point{(x0+x1)/2 + dir*40, at((x0+x1)/2+dir*40) - 14})
		}
	}
	floor := math.Max(at(x0), at(x1)) + 130
	for i, c := range list {
		x := x0 + 92 + headerWidth*float64(i)
		d.connector(c, x, at(x), floor, h != nil)
	}
	d.trap(f, h, low, x0, x1, at)
	d.riser(f, riser, term, x1, at(x1))
}

func (d *flueDrawing) facts(part *plant.Part) []string {
	out := []string{}
	first := asWritten(part.Get("size"))
	if t := asWritten(part.Get("length")); t != "" {
		first += ", " + t
	}
	if m := asWritten(part.Get("material")); m != "" {
		first += ", " + m
	}
	out = append(out, first)
	if part.Kind != "riser" {
		out = append(out, fall(part))
	}
	if t := asWritten(part.Get("class")); t != "" {
		out = append(out, "class "+t)
	}
	out = append(out, d.value(part, "pressure", solve.AllFull, "")+d.value(part, "velocity", solve.AllFull, ", "))
	return out
}

// arrow points downhill.
func (d *flueDrawing) arrow(a, b point) {
	d.thin("", a, b)
	l := math.Hypot(b.x-a.x, b.y-a.y)
	ux, uy := (b.x-a.x)/l, (b.y-a.y)/l
	d.thin("", point{b.x - 8*ux + 4*uy, b.y - 8*uy - 4*ux}, b, point{b.x - 8*ux - 4*uy, b.y - 8*uy + 4*ux})
}

// connector rises from its unit, then runs to the header with its fall.
func (d *flueDrawing) connector(c *plant.Part, x, y, floor float64, header bool) {
	run := 52.0
	f, known := slope(c)
	drop := math.Min(math.Max(f*steeper, -0.5), 0.5) * run // how far the unit's end lies lower
	if towards(c, "flue-header") || towards(c, "riser") {
		drop = -drop
	}
	dash := ""
	if !known {
		dash = "6 4"
	}
	join := point{x, y}
	knee := point{x - run, y + 44 + drop}
	d.styled(d.marks.Of(c).Band, dash, join, point{x, y + 44}, knee)
	d.styled(d.marks.Of(c).Band, "", knee, point{knee.x, floor})
	if header {
		d.dot(x, y)
	}
	facts := []string{asWritten(c.Get("size")) + ", " + asWritten(c.Get("length")), shortFall(c)}
	u, ok := c.Ref("from")
	if ok {
		b := box{knee.x - 30, floor, knee.x + 30, floor + 34}
		d.rect(b, d.marks.Of(u.Part).Band, "", true)
		name := u.Part.Label() + d.signs(u.Part)
		if w := TextWidth(name, labelSize, true); w < 58 {
			d.text(knee.x-w/2, floor+21, labelSize, true, Anchor(u.Part.Address()), name)
		} else {
			d.label(b, u.Part, []side{below})
		}
		d.label(b, nil, []side{below}, d.value(u.Part, "flue-margin", solve.AllFull, "margin "))
		if damper := u.Part.Child("damper"); damper != nil && !damper.First().Absent() {
			d.sym("damper", damper, knee.x, floor-18, -90)
		}
	}
	facts = append(facts, d.value(c, "pressure", solve.AllFull, ""))
	d.label(box{knee.x - 3, knee.y + 16, knee.x + 3, floor - 30}, c, []side{right, left}, facts...)
	if known && f != 0 {
		a, b := point{x - 4, y + 52}, point{knee.x + 8, knee.y + 7}
		if drop < 0 {
			a, b = b, a
		}
		d.arrow(a, b)
	}
}

func shortFall(c *plant.Part) string {
	if v := c.Get("falls"); v.Known() {
		return "falls " + asWritten(v)
	}
	return "fall not stated"
}

func (d *flueDrawing) trap(f, h *plant.Part, low, x0, x1 float64, at func(float64) float64) {
	if h == nil {
		return
	}
	x := x0
	if low > 0 {
		x = x1
	}
	y := at(x)
	for _, b := range f.Children("blank") {
		if ref, ok := b.Ref("of"); ok && ref.Part == h {
			d.sym("blank", b, x0, at(x0), 0)
		}
	}
	t := (&schematic{topology: d.topology}).flueTrap(f)
	if t == nil {
		d.label(around(x, y+16, 8, 8), nil, []side{below, left}, "no trap stated")
		return
	}
	d.styled(d.marks.Of(t).Band, services[condensateLine].dash, point{x, y}, point{x, y + 90})
	b := d.sym("trap", t, x, y+54, 0)
	to := ""
	if ref, ok := t.Ref("to"); ok {
		to = "to " + ref.Part.Label()
	}
	d.label(b, t, []side{left, below}, seal(t), to)
}

// riser draws what leads from the header to the terminal: offsets and the riser
// itself, broken where it is longer than the drawing is high.
func (d *flueDrawing) riser(f, riser, term *plant.Part, x, y float64) {
	for _, run := range f.Children("run") {
		end := point{x + 110, y}
		if s, ok := slope(run); ok {
			end.y -= math.Min(math.Max(s*steeper, -0.35), 0.35) * 110
		}
		d.styled(d.marks.Of(run).Band, "", point{x, y}, end)
		d.label(around(x+55, (y+end.y)/2, 80, 10), run, []side{below, above}, d.facts(run)...)
		x, y = end.x, end.y
	}
	if riser == nil && term == nil {
		d.label(around(x, y, 4, 4), nil, []side{right}, "neither riser nor terminal stated")
		return
	}
	top := y - riserShown
	band := d.marks.Of(riser).Band
	mid := (y + top) / 2
	d.styled(band, "", point{x, y}, point{x, mid + 8})
	d.styled(band, "", point{x, mid - 8}, point{x, top})
	d.thin("", point{x - 12, mid + 12}, point{x + 12, mid + 4})
	d.thin("", point{x - 12, mid - 4}, point{x + 12, mid - 12})
	if riser != nil {
		d.label(around(x, mid+50, 14, 40), riser, []side{right}, d.facts(riser)...)
		for _, b := range f.Children("bend") {
			if ref, ok := b.Ref("on"); ok && ref.Part == riser {
				what := asWritten(b.Get("angle")) + " bend"
				if b.Has("inspection") {
					what += ", inspection opening"
				}
				if b.Has("concealed") {
					what += ", concealed"
				}
				d.label(around(x, y, 10, 10), nil, []side{right, below}, what)
			}
		}
	} else {
		d.label(around(x, mid+50, 14, 40), nil, []side{right}, "no riser stated")
	}
	if term == nil {
		d.label(around(x, top, 10, 10), nil, []side{above, right}, "no terminal stated")
		return
	}
	b := d.sym("terminal", term, x, top-11, 0)
	d.label(b, term, []side{right, above}, termFacts(term)...)
	if over := term.Get("above"); over.Known() && term.Get("place").Is("roof") {
		d.ground(x-130, x-10, top+46, 8)
		d.ground(x+10, x+60, top+46, 8)
		d.dimension(point{x - 60, top + 46}, point{x - 60, top - 22}, 0.01, asWritten(over)+" above the roof")
	}
}

func termFacts(t *plant.Part) []string {
	out := []string{asWritten(t.Get("place")) + " " + asWritten(t.Get("cap"))}
	for _, k := range [...]string{"from-window", "from-intake", "from-boundary", "from-terminal", "above-ground"} {
		if v := t.Get(k); v.Known() {
			out = append(out, lang.In(v.Num, unitOf(v))+" "+dashless(k))
		}
	}
	return out
}

func dashless(k string) string {
	if len(k) > 5 && k[:5] == "from-" {
		return "from the " + k[5:]
	}
	return "above the " + k[6:]
}

func unitOf(v plant.Value) string {
	if u := asUnit(v); u != "" {
		return u
	}
	return "m"
}

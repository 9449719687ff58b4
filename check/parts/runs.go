package parts

import (
	"math"
	"strings"

	"example.org/tundish/check/calc/pipe"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/tables"
)

// isFlanged tells a pipe or device whose joints are flanges. A size in mm is the
// outside of a copper or plastic pipe, which is soldered, pressed or welded.
func (c *counter) isFlanged(v plant.Value) bool {
	return v.Known() && v.Num > c.flanged && !strings.HasSuffix(v.Word, "mm")
}

// joint counts the gasket and the bolts of n flanged joints of a size.
func (c *counter) joint(pkg string, size plant.Value, n float64, from *plant.Part, note string) {
	if n == 0 {
		return
	}
	c.off(pkg, "gasket", size.Word, n, from, note)
	f := tables.Bolting(size.Num, !strings.HasPrefix(size.Word, "DN"))
	if f == nil {
		c.gap(from, "the bolting of a flange "+size.Word)
		return
	}
	c.off(pkg, "bolt with nut", f.Thread, n*float64(f.Bolts), from, note)
}

// inline counts a device that stands in a pipe with its two joints.
func (c *counter) inline(pkg, name string, part *plant.Part) {
	size := part.Get("size")
	c.off(pkg, name, c.size(part), 1, part, "")
	if c.isFlanged(size) {
		c.joint(pkg, size, 2, part, "both sides of a device")
		c.off(pkg, "flange", size.Word, 2, part, "both sides of a device")
	}
}

// blank counts a closed end.
func (c *counter) blank(pkg string, b *plant.Part) {
	size := b.Get("size")
	if !c.isFlanged(size) {
		c.off(pkg, "cap", c.size(b), 1, b, "closes an end")
		return
	}
	c.off(pkg, "blank flange", size.Word, 1, b, "closes an end")
	c.joint(pkg, size, 1, b, "closes an end")
}

// run counts a pipe with its fittings, its supports and the joints at its ends.
func (c *counter) run(pkg string, p *plant.Part, water bool) {
	size, what := p.Get("size"), material(p)
	s := c.size(p)
	length := p.Get("length")
	if length.Known() {
		c.length(pkg, what+" pipe", s, length.Num, p, "measured length")
		c.supports(pkg, p, length.Num, 0, water)
	} else {
		c.gap(p, "the length of "+p.Label())
	}
	for _, f := range [...][2]string{{"bends", "bend"}, {"half-bends", "half bend"}, {"tees", "tee"}, {"branch-tees", "tee"}, {"reducers", "reducer"}, {"unions", "union"}, {"valves", "valve"}} {
		c.off(pkg, what+" "+f[1], s, stated(p, f[0]), p, "")
	}
	if n := stated(p, "sleeves"); n > 0 {
		c.off(pkg, "sleeve", s, n, p, "crosses a wall or floor")
	}
	ends := append(append([]plant.Ref(nil), p.Refs("from")...), p.Refs("to")...)
	for _, e := range ends {
		c.end(pkg, p, size, e.Part)
	}
}

// end counts the joint of a pipe with what it meets. Pipes are welded to pipes;
// branches and drops are screwed to a take-off of the header; the joints of an
// exchanger or separator are counted with it.
func (c *counter) end(pkg string, p *plant.Part, size plant.Value, met *plant.Part) {
	switch met.Kind {
	case "header", "manifold":
		own := met.Get("size")
		if p.Kind == "branch" || p.Kind == "drop" {
			c.off(pkg, "take-off", both(own.Word, "to "+size.Word), 1, p, "on "+met.Label())
			return
		}
		if c.isFlanged(own) {
			c.joint(pkg, own, 1, p, "joins "+met.Label())
			c.off(pkg, "flange", own.Word, 1, p, "joins "+met.Label())
		}
		c.reducer(pkg, p, size, own, met)
	case "exchanger", "separator":
		c.reducer(pkg, p, size, port(met), met)
	case "meter", "regulator", "valve", "booster":
		if met.Kind == "valve" {
			c.reducer(pkg, p, size, met.Get("size"), met)
			size = met.Get("size")
		}
		if c.isFlanged(size) {
			c.joint(pkg, size, 1, p, "joins "+met.Label())
			c.off(pkg, "flange", size.Word, 1, p, "joins "+met.Label())
		}
	}
}

func (c *counter) reducer(pkg string, p *plant.Part, a, b plant.Value, met *plant.Part) {
	if !a.Known() || !b.Known() || math.Abs(a.Num-b.Num) < 1e-4 {
		return
	}
	if a.Num < b.Num {
		a, b = b, a
	}
	c.off(pkg, "reducer", a.Word+" to "+b.Word, 1, p, "joins "+met.Label())
}

// port is the size of the ports of an exchanger or separator.
func port(dev *plant.Part) plant.Value {
	if v := dev.Get("ports"); v.Known() {
		return v
	}
	return dev.Get("connection")
}

// supports counts one support for each whole or begun spacing, and more where
// both ends need their own.
func (c *counter) supports(pkg string, p *plant.Part, length, more float64, water bool) {
	size := p.Get("size")
	note := "spacing as stated"
	step := p.Get("support").Num
	if v := p.Get("support"); !v.Known() {
		var ok bool
		mat := p.Get("material").Word
		if water {
			step, ok = pipe.WaterSupport(mat, size.Num)
		} else {
			step, ok = pipe.GasSupport(mat, size.Num)
		}
		if !ok {
			c.gap(p, "the spacing of the supports of "+p.Label()+" (support)")
			return
		}
		note = "greatest allowed spacing"
	}
	c.off(pkg, "pipe support", size.Word, steps(length, step)+more, p, note)
}

// steps is the number of whole or begun spacings in a length.
func steps(length, spacing float64) float64 { return math.Ceil(length/spacing - 1e-9) }

func material(p *plant.Part) string {
	switch m := p.Get("material").Word; m {
	case "":
		return "unstated-material"
	case "steel-heavy":
		return "heavy steel"
	case "steel-40":
		return "schedule 40 steel"
	default:
		return m
	}
}

// collector counts a header or manifold: length, pieces with their joints, and
// its supports on the frame's brackets.
func (c *counter) collector(pkg, name string, h *plant.Part, water bool) {
	size := h.Get("size")
	s := c.size(h)
	length := h.Get("length")
	if !length.Known() {
		c.gap(h, "the length of "+h.Label())
		return
	}
	c.length(pkg, material(h)+" "+name, s, length.Num, h, "from the first take-off to the last")
	if section := sectionLength(c.p); section > 0 {
		n := steps(length.Num, section) - 1
		if c.isFlanged(size) {
			c.joint(pkg, size, n, h, "between its pieces, each as long as a frame section")
		}
	} else {
		c.gap(h, "the length of a frame section, to know the pieces of "+h.Label())
	}
	if h.Get("support").Known() {
		c.supports(pkg, h, length.Num, 1, water)
	} else if b := c.p.One("bracket").First(); b.Known() {
		c.off(pkg, "pipe support", s, steps(length.Num, b.Num)+1, h, "on the brackets of the frame")
	} else {
		c.supports(pkg, h, length.Num, 1, water)
	}
}

// sectionLength is the length in m of a straight frame section; 0 without one.
func sectionLength(p *plant.Plant) float64 {
	for _, s := range p.ByKind("section") {
		if s.Owner != nil && s.Owner.Kind == "frame" && !s.Get("shape").Is("corner") {
			return s.Get("length").Num
		}
	}
	return 0
}

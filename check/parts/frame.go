package parts

import "example.org/tundish/check/plant"

// frame counts sections, couplings, links, feet and what holds them.
func frame(c *counter) {
	for _, f := range c.p.ByKind("frame") {
		rows, sections, corners := f.Children("row"), f.Children("section"), 0.0
		for _, s := range sections {
			length := s.Get("length")
			if !length.Known() {
				c.gap(s, "the length of "+s.Label())
				continue
			}
			shape := "straight"
			if s.Get("shape").Is("corner") {
				shape = "corner"
				corners++
			}
			c.off(Frame, shape+" frame section", c.text(length), 1, s, "")
		}
		if len(sections) == 0 {
			c.gap(f, "the sections of "+f.Label())
		}
		arms := 1
		if f.Get("layout").Is("back-to-back") {
			arms = max(1, len(rows))
		}
		if n := len(sections) - arms; n > 0 {
			c.off(Frame, "section coupling", "", float64(n), sections[0], "between sections of one arm")
		}
		if l := f.Child("link"); l != nil {
			if kind := l.Get("kind"); kind.Is("back-to-back") || kind.Is("corner") && corners == 0 {
				c.off(Frame, kind.Word+" link", c.text(l.Get("length")), 1, l, "joins the arms")
			}
		}
		feet(c, f)
	}
}

func feet(c *counter, f *plant.Part) {
	feet := f.Child("feet")
	n := feet.First()
	if !n.Known() {
		c.gap(f, "the feet of "+f.Label())
		return
	}
	name := "foot"
	if feet.Has("adjustable") {
		name = "adjustable foot"
	}
	c.off(Frame, name, "", n.Num, feet, "")
	st := f.Child("standing")
	if feet.Has("anchored") || st.First().Is("floor-anchored") {
		c.off(Frame, "floor anchor", "", n.Num, feet, "one for each foot; the structural engineer says which")
	}
	if feet.Has("pads") {
		c.off(Frame, "vibration pad", "", n.Num, feet, "one for each foot")
	}
	if st.First().Is("wall-tied") {
		c.off(Frame, "wall tie", "", float64(len(f.Children("section"))), st, "one for each section")
	}
}

package draw

import (
	"fmt"
	"strconv"
	"strings"

	"example.org/tundish/check/plant"
)

// canvas collects a drawing. Lines lie under symbols and symbols under texts,
// and labels are placed last, when everything they must keep clear of is known.
type canvas struct {
	marks  Marks
	lines  strings.Builder
	syms   strings.Builder
	texts  strings.Builder
	solid  []box     // symbols and texts: a label never covers one
	segs   []segment // lines: a label covers one only where there is no other place
	wants  []label
	extent box
	drawn  bool
}

func newCanvas(m Marks) *canvas { return &canvas{marks: m} }

func num(v float64) string {
	s := strconv.FormatFloat(v, 'f', 1, 64)
	s = strings.TrimSuffix(s, ".0")
	if s == "-0" {
		return "0"
	}
	return s
}

func (c *canvas) cover(b box) {
	if !c.drawn {
		c.extent, c.drawn = b, true
		return
	}
	c.extent = c.extent.union(b)
}

// service is the medium of a pipe; it gives the dash pattern.
type service uint8

const (
	gasLine service = iota
	flowLine
	returnLine
	flueLine
	condensateLine
)

var services = [...]struct{ code, says, dash string }{
	gasLine:        {"G", "gas", ""},
	flowLine:       {"F", "flow", ""},
	returnLine:     {"R", "return", "9 4"},
	flueLine:       {"FL", "flue", ""},
	condensateLine: {"C", "condensate", "9 3 2 3"},
}

// pipe draws a part as a line through the points.
func (c *canvas) pipe(part *plant.Part, s service, pts ...point) {
	c.styled(c.marks.Of(part).Band, services[s].dash, pts...)
}

func (c *canvas) styled(band Band, dash string, pts ...point) {
	st := strokes[band]
	d := path(pts)
	attr := ""
	if dash != "" {
		attr = ` stroke-dasharray="` + dash + `"`
	}
	fmt.Fprintf(&c.lines, `<path d="%s" fill="none" stroke="%s" stroke-width="%s"%s/>`+"\n", d, st.color, num(st.width), attr)
	if st.core > 0 {
		fmt.Fprintf(&c.lines, `<path d="%s" fill="none" stroke="#ffffff" stroke-width="%s"/>`+"\n", d, num(st.core))
	}
	c.note(pts)
}

// thin draws a line that stands for no part: a dimension, a leader, a ground line.
func (c *canvas) thin(dash string, pts ...point) {
	attr := ""
	if dash != "" {
		attr = ` stroke-dasharray="` + dash + `"`
	}
	fmt.Fprintf(&c.lines, `<path d="%s" fill="none" stroke="#444444" stroke-width="0.8"%s/>`+"\n", path(pts), attr)
	c.note(pts)
}

func (c *canvas) note(pts []point) {
	for i := 1; i < len(pts); i++ {
		c.segs = append(c.segs, segment{pts[i-1], pts[i]})
	}
	for _, p := range pts {
		c.cover(box{p.x, p.y, p.x, p.y}.grown(4))
	}
}

func path(pts []point) string {
	var b strings.Builder
	for i, p := range pts {
		if i == 0 {
			b.WriteByte('M')
		} else {
			b.WriteByte('L')
		}
		b.WriteString(num(p.x) + " " + num(p.y))
	}
	return b.String()
}

// dot marks where lines join; lines that cross without one do not join.
func (c *canvas) dot(x, y float64) {
	fmt.Fprintf(&c.syms, `<circle cx="%s" cy="%s" r="3" fill="#222222"/>`+"\n", num(x), num(y))
}

// text sets one line of text, anchored at its left end on the base line.
func (c *canvas) text(x, y, size float64, bold bool, link, s string) box {
	w := TextWidth(s, size, bold)
	weight := ""
	if bold {
		weight = ` font-weight="bold"`
	}
	t := fmt.Sprintf(`<text x="%s" y="%s" font-size="%s" textLength="%s" lengthAdjust="spacingAndGlyphs" fill="#111111"%s>%s</text>`, num(x), num(y), num(size), num(w), weight, escape(s))
	if link != "" {
		t = `<a href="#` + escape(link) + `">` + t + `</a>`
	}
	c.texts.WriteString(t + "\n")
	b := box{x, y - ascent*size, x + w, y + descent*size}
	c.solid = append(c.solid, b)
	c.cover(b)
	return b
}

// Height of the letters above and below the base line, by the size.
const (
	ascent  = 0.80
	descent = 0.22
)

var escaper = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;")

func escape(s string) string {
	s = strings.Map(func(r rune) rune {
		if r < ' ' || r == 0x7f || r == 0xfffe || r == 0xffff {
			return ' ' // XML has no place for them
		}
		return r
	}, strings.ToValidUTF8(s, "?"))
	return escaper.Replace(s)
}

// finish places the labels, adds the legend if asked, and gives the SVG.
func (c *canvas) finish(name, about string, notes []string, kinds []service) []byte {
	c.place()
	c.legend(name, notes, kinds)
	e := c.extent.grown(12)
	var b strings.Builder
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="%s %s %s %s" width="%s" height="%s" role="img" font-family="%s">`+"\n",
		num(e.x0), num(e.y0), num(e.x1-e.x0), num(e.y1-e.y0), num(e.x1-e.x0), num(e.y1-e.y0), FontFamily)
	fmt.Fprintf(&b, "<title>%s</title>\n<desc>%s</desc>\n", escape(name), escape(about))
	fmt.Fprintf(&b, `<rect x="%s" y="%s" width="%s" height="%s" fill="#ffffff"/>`+"\n", num(e.x0), num(e.y0), num(e.x1-e.x0), num(e.y1-e.y0))
	b.WriteString("<g>\n" + c.lines.String() + "</g>\n<g>\n" + c.syms.String() + "</g>\n<g>\n" + c.texts.String() + "</g>\n</svg>\n")
	return []byte(b.String())
}

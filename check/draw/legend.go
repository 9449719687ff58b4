package draw

import (
	"fmt"
	"strings"
)

// legend stands under the drawing: title, bands, signs, services and notes.
func (c *canvas) legend(name string, notes []string, kinds []service) {
	x, y := c.extent.x0, c.extent.y1+34
	wide := max(c.extent.x1-c.extent.x0, 560)
	c.text(x, y, 15, true, "", name)
	y += 22
	row := func(items int, each float64, item func(i int, x, y float64)) {
		per := max(1, int(wide/each))
		for i := range items {
			item(i, x+float64(i%per)*each, y+float64(i/per)*18)
		}
		y += float64((items+per-1)/per)*18 + 4
	}
	c.text(x, y, labelSize, true, "", "Share of the limit that is used")
	y += 18
	order := [...]Band{Plenty, Near, Tight, Over, Unknown, NotJudged}
	row(len(order), 225, func(i int, x, y float64) {
		c.styled(order[i], "", point{x, y - 4}, point{x + 36, y - 4})
		c.text(x+44, y, labelSize, false, "", strokes[order[i]].says)
	})
	if len(kinds) > 0 {
		row(len(kinds), 130, func(i int, x, y float64) {
			c.styled(NotJudged, services[kinds[i]].dash, point{x, y - 4}, point{x + 36, y - 4})
			c.text(x+44, y, labelSize, false, "", services[kinds[i]].code+"  "+services[kinds[i]].says)
		})
	}
	notes = append([]string{"Behind a name, ! is a broken limit or another finding and ? an open question. A name leads to the calculation of the part."}, notes...)
	notes = append(notes, "Supports, and never replaces, the work of a registered engineer: no permission to build, to fire or to open gas.")
	for _, n := range notes {
		for _, part := range wrap(n, labelSize, wide) {
			c.text(x, y, labelSize, false, "", part)
			y += 15
		}
	}
}

// wrap breaks a text into lines of a width in px.
func wrap(s string, size, wide float64) []string {
	var out []string
	line := ""
	for _, w := range strings.Fields(s) {
		switch {
		case line == "":
			line = w
		case TextWidth(line+" "+w, size, false) > wide:
			out, line = append(out, line), w
		default:
			line += " " + w
		}
	}
	return append(out, line)
}

// tag sets the letters of a service on a line.
func (c *canvas) tag(s service, x, y float64) {
	code := services[s].code
	w := TextWidth(code, 10, true)
	fmt.Fprintf(&c.syms, `<rect x="%s" y="%s" width="%s" height="14" fill="#ffffff" stroke="#222222" stroke-width="0.7"/>`+"\n", num(x-w/2-3), num(y-7), num(w+6))
	c.text(x-w/2, y+3.5, 10, true, "", code)
	c.solid = append(c.solid, around(x, y, w+6, 14))
}

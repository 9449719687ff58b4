// Package plot draws curves of what was computed for a plant: gas pressure along
// the run, flow and pressure at the headers, pressure along the flue, pumps
// against their circuits and the load over the year. Each plot is one
// self-contained <svg> element. A plot that lacks a value is not drawn: the
// error is a Missing and says what it needs.
package plot

import (
	"bytes"
	"fmt"
	"html"
	"image/color"
	"regexp"
	"strconv"
	"strings"
	"sync"

	gonum "gonum.org/v1/plot"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	vgdraw "gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/vgsvg"

	"example.org/tundish/check/draw"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// Missing is why a plot cannot be drawn: what the plant would have to state, or
// what the calculation lacks.
type Missing struct {
	Plot  string // "the gas pressure"
	Needs string
}

func (m *Missing) Error() string { return "a plot of " + m.Plot + " needs " + m.Needs }

// Lines that stay apart in grey: each has a dash pattern of its own, and colors
// that the common kinds of color blindness keep apart.
var (
	grey   = color.RGBA{0x55, 0x55, 0x55, 0xff}
	blue   = color.RGBA{0x00, 0x72, 0xb2, 0xff}
	orange = color.RGBA{0xb3, 0x59, 0x00, 0xff}
	red    = color.RGBA{0x8f, 0x0f, 0x2e, 0xff}
	pale   = color.RGBA{0xdd, 0xdd, 0xdd, 0xff}
)

var styles = [...]struct {
	color color.Color
	dash  []vg.Length
}{
	{blue, nil},
	{orange, []vg.Length{8, 3}},
	{color.RGBA{0x00, 0x6b, 0x4f, 0xff}, []vg.Length{2, 2}},
}

const (
	wide = 720 // of a plot in points
	high = 330
)

// panel makes an empty plot with its texts in our type.
func panel(title, x, y string) *gonum.Plot {
	p := gonum.New()
	sans := font.Font{Typeface: "Liberation", Variant: "Sans"}
	p.Title.Text, p.X.Label.Text, p.Y.Label.Text = title, x, y
	for _, s := range []*font.Font{&p.Title.TextStyle.Font, &p.X.Label.TextStyle.Font, &p.Y.Label.TextStyle.Font, &p.X.Tick.Label.Font, &p.Y.Tick.Label.Font, &p.Legend.TextStyle.Font} {
		*s = font.From(sans, 11)
	}
	p.Title.TextStyle.Font.Size = 12
	p.Title.Padding = 6
	p.Legend.Padding = 3
	p.Legend.ThumbnailWidth = 30
	p.BackgroundColor = color.White
	grid := plotter.NewGrid()
	grid.Vertical.Color, grid.Horizontal.Color = pale, pale
	p.Add(grid)
	return p
}

// line adds a line, with a legend unless its name is empty.
func line(p *gonum.Plot, name string, pts plotter.XYs, c color.Color, width vg.Length, dash []vg.Length) error {
	l, err := plotter.NewLine(pts)
	if err != nil {
		return fmt.Errorf("drawing the line %s: %w", name, err)
	}
	l.Color, l.Width, l.Dashes = c, width, dash
	p.Add(l)
	if name != "" {
		p.Legend.Add(name, l)
	}
	return nil
}

// marks adds points of one shape.
func marks(p *gonum.Plot, name string, pts plotter.XYs, c color.Color, shape vgdraw.GlyphDrawer) error {
	s, err := plotter.NewScatter(pts)
	if err != nil {
		return fmt.Errorf("drawing the points %s: %w", name, err)
	}
	s.GlyphStyle = vgdraw.GlyphStyle{Color: c, Radius: 4, Shape: shape}
	p.Add(s)
	if name != "" {
		p.Legend.Add(name, s)
	}
	return nil
}

// cross is a mark of two strokes that stays to be seen in print.
type cross struct{}

// DrawGlyph draws the cross.
func (cross) DrawGlyph(c *vgdraw.Canvas, s vgdraw.GlyphStyle, at vg.Point) {
	r := s.Radius
	for _, d := range [...]vg.Length{r, -r} {
		c.StrokeLine2(vgdraw.LineStyle{Color: s.Color, Width: 1.6}, at.X-r, at.Y-d, at.X+r, at.Y+d)
	}
}

// level is a horizontal dashed line for a limit.
func level(p *gonum.Plot, name string, x0, x1, y float64) error {
	return line(p, name, plotter.XYs{{X: x0, Y: y}, {X: x1, Y: y}}, red, 1.6, []vg.Length{5, 2, 1, 2})
}

// render sets panels beside each other and gives the SVG.
func render(name, about string, panels ...*gonum.Plot) ([]byte, error) {
	c := vgsvg.New(wide, high)
	dc := vgdraw.New(c)
	tiles := vgdraw.Tiles{Rows: 1, Cols: len(panels), PadX: 16, PadTop: 4, PadBottom: 4, PadLeft: 4, PadRight: 12}
	rows := [][]*gonum.Plot{panels}
	for i, at := range gonum.Align(rows, tiles, dc)[0] {
		panels[i].Draw(at)
	}
	var b bytes.Buffer
	if _, err := c.WriteTo(&b); err != nil {
		return nil, fmt.Errorf("writing the plot: %w", err)
	}
	return tidy(b.String(), name, about)
}

// patterns find what tidy changes; they are made when the first plot is drawn.
var patterns = sync.OnceValue(func() (p struct{ styleAttr, textElem, fontSize *regexp.Regexp }) {
	p.styleAttr = regexp.MustCompile(`\s*style="([^"]*)"`)
	p.textElem = regexp.MustCompile(`(?s)<text ([^>]*)>(.*?)</text>`)
	p.fontSize = regexp.MustCompile(`font-size="([0-9.]+)px"`)
	return p
})

// tidy makes a fragment of the backend's document: title and description, no
// style attributes (a page may forbid them), no face that has to be installed,
// and every text held to the width that it was laid out with.
func tidy(svg, name, about string) ([]byte, error) {
	i := strings.Index(svg, "<svg")
	j := strings.Index(svg, "<g ")
	if i < 0 || j < i {
		return nil, fmt.Errorf("drawing %s: the backend gave no SVG", name)
	}
	p := patterns()
	body := p.styleAttr.ReplaceAllStringFunc(svg[j:], func(s string) string {
		var b strings.Builder
		for _, d := range strings.Split(p.styleAttr.FindStringSubmatch(s)[1], ";") {
			key, value, ok := strings.Cut(strings.TrimSpace(d), ":")
			switch {
			case !ok, key == "font-family", key == "font-variant":
			default:
				b.WriteString(" " + key + `="` + value + `"`)
			}
		}
		return b.String()
	})
	body = p.textElem.ReplaceAllStringFunc(body, func(s string) string {
		m := p.textElem.FindStringSubmatch(s)
		size := p.fontSize.FindStringSubmatch(m[1])
		if size == nil {
			return s
		}
		px, err := strconv.ParseFloat(size[1], 64)
		if err != nil {
			return s
		}
		w := draw.TextWidth(html.UnescapeString(m[2]), px, strings.Contains(m[1], "bold"))
		return fmt.Sprintf(`<text %s textLength="%.1f" lengthAdjust="spacingAndGlyphs">%s</text>`, m[1], w, m[2])
	})
	head := fmt.Sprintf(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %d %d" width="%d" height="%d" role="img" font-family="%s">`+"\n<title>%s</title>\n<desc>%s</desc>\n", wide, high, wide, high, draw.FontFamily, html.EscapeString(name), html.EscapeString(about))
	return []byte(head + body), nil
}

// in converts an SI value to a unit of the language.
func in(v float64, unit string) float64 {
	u, ok := lang.LookupUnit(unit)
	if !ok {
		return v
	}
	return lang.FromSI(v, u)
}

// lengthUnit is the unit of distances.
func lengthUnit(p *plant.Plant) string {
	if p.US() {
		return "ft"
	}
	return "m"
}

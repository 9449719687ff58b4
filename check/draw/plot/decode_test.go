package plot_test

import (
	"encoding/xml"
	"html"
	"math"
	"regexp"
	"sort"
	"strconv"
	"strings"
	"testing"

	"example.org/tundish/lang"
)

// curves is one panel read back from its SVG: what was drawn, in the numbers of
// its axes.
type curves struct {
	texts  []string
	names  []string                // of the places of a nominal axis, from left to right
	lines  map[string][][]xy       // by the name in the legend; "" for those without
	points map[string][]xy         // marks by the name in the legend
	near   func(a, b float64) bool // equal as far as the drawing can be read, on the y axis
	nearX  func(a, b float64) bool
}

type xy struct{ x, y float64 }

type element struct {
	text, d, style string
	x, y           float64
	isText         bool
}

var (
	elem    = regexp.MustCompile(`(?s)<text ([^>]*)>([^<]*)</text>|<path d="([^"]*)"([^>]*)/>|<g transform="rotate\(90\)">|</g>`)
	attrs   = regexp.MustCompile(`([a-z-]+)="([^"]*)"`)
	corner  = regexp.MustCompile(`[ML](-?[0-9.]+),(-?[0-9.]+)`)
	circle  = regexp.MustCompile(`^M(-?[0-9.]+),(-?[0-9.]+)A([0-9.]+),`)
	noStyle = regexp.MustCompile(`\s+`)
)

// decode reads the panels of a plot. Axes are read from the grid lines, which
// stand at the labelled ticks.
func decode(t *testing.T, svg []byte) []*curves {
	t.Helper()
	if err := xml.Unmarshal(svg, new(struct{})); err != nil {
		t.Fatalf("not well-formed: %v", err)
	}
	var panels [][]element
	turned := false
	for _, m := range elem.FindAllStringSubmatch(string(svg), -1) {
		switch {
		case m[1] != "":
			e := element{isText: true, text: html.UnescapeString(m[2])}
			for _, a := range attrs.FindAllStringSubmatch(m[1], -1) {
				v, _ := strconv.ParseFloat(a[2], 64)
				switch a[1] {
				case "x":
					e.x = v
				case "y":
					e.y = -v
				case "textLength":
					e.x += v / 2
				}
			}
			if turned {
				e.x, e.y = math.Inf(1), math.Inf(1) // the label of the y axis
			}
			panels[len(panels)-1] = append(panels[len(panels)-1], e)
		case m[3] != "":
			style := strings.TrimSpace(noStyle.ReplaceAllString(m[4], " "))
			if style == `fill="#FFFFFF"` {
				panels = append(panels, nil)
				continue
			}
			panels[len(panels)-1] = append(panels[len(panels)-1], element{d: m[3], style: style})
		case m[0] == "</g>":
			turned = false
		default:
			turned = true
		}
	}
	var out []*curves
	for _, p := range panels {
		out = append(out, read(t, p))
	}
	return out
}

func pointsOf(d string) (out []xy) {
	for _, m := range corner.FindAllStringSubmatch(d, -1) {
		x, _ := strconv.ParseFloat(m[1], 64)
		y, _ := strconv.ParseFloat(m[2], 64)
		out = append(out, xy{x, y})
	}
	return out
}

func read(t *testing.T, list []element) *curves {
	t.Helper()
	c := &curves{lines: map[string][][]xy{}, points: map[string][]xy{}}
	var xs, ys []float64 // grid lines
	for _, e := range list {
		if strings.Contains(e.style, `stroke="#DDDDDD"`) {
			p := pointsOf(e.d)
			if p[0].x == p[1].x {
				xs = append(xs, p[0].x)
			} else {
				ys = append(ys, p[0].y)
			}
		}
	}
	sort.Float64s(xs)
	sort.Float64s(ys)
	left, low := xs[0], ys[0]
	type tick struct{ at, value float64 }
	var xt, yt []tick
	for _, e := range list {
		if !e.isText {
			continue
		}
		c.texts = append(c.texts, e.text)
		v, err := strconv.ParseFloat(e.text, 64)
		switch {
		case e.y < low-12 && err == nil && e.x > left-12:
			xt = append(xt, tick{e.x, v})
		case e.y < low-4 && err != nil && !strings.Contains(e.text, " ") && !math.IsInf(e.x, 0):
			c.names = append(c.names, e.text)
		case e.x < left && err == nil:
			yt = append(yt, tick{e.y, v})
		}
	}
	axis := func(lines []float64, ticks []tick) (to func(float64) float64, step float64) {
		sort.Slice(ticks, func(i, j int) bool { return ticks[i].at < ticks[j].at })
		if len(ticks) < 2 || len(ticks) != len(lines) {
			t.Fatalf("%d grid lines and %d numbers beside them", len(lines), len(ticks))
		}
		n := len(lines) - 1
		per := (ticks[n].value - ticks[0].value) / (lines[n] - lines[0])
		return func(px float64) float64 { return ticks[0].value + (px-lines[0])*per }, math.Abs(per)
	}
	toY, perY := axis(ys, yt)
	toX, perX := func(px float64) float64 { // places of a nominal axis
		for i, x := range xs {
			if math.Abs(px-x) < 0.1 {
				return float64(i)
			}
		}
		return math.NaN()
	}, 1e-9
	if len(xt) > 0 {
		toX, perX = axis(xs, xt)
	}
	// A drawing is rounded to five digits, some 0.005 px; 0.05 px is held against it.
	c.near = func(a, b float64) bool { return math.Abs(a-b) <= 0.05*perY }
	c.nearX = func(a, b float64) bool { return math.Abs(a-b) <= 0.05*perX }
	// In the legend, a short sample or mark stands before its name.
	name := map[string]string{}
	sample := map[int]bool{}
	for i := 1; i < len(list); i++ {
		if !list[i].isText || list[i].y < ys[0] || list[i].x < left {
			continue
		}
		for j := i - 1; j >= 0 && !list[j].isText && looks(list[j]) == looks(list[i-1]); j-- {
			if p := pointsOf(list[j].d); len(p) == 2 && p[0].y == p[1].y && math.Abs(p[1].x-p[0].x-30) > 0.1 {
				break // the last line of the data looks like its sample
			}
			name[looks(list[j])] = list[i].text
			sample[j] = true
			if !isCross(list[j]) {
				break
			}
			if j == i-2 {
				break
			}
		}
	}
	for i, e := range list {
		if e.isText || sample[i] || strings.Contains(e.style, "#DDDDDD") || strings.Contains(e.style, "#000000") {
			continue
		}
		key := name[looks(e)]
		if m := circle.FindStringSubmatch(e.d); m != nil {
			x, _ := strconv.ParseFloat(m[1], 64)
			y, _ := strconv.ParseFloat(m[2], 64)
			r, _ := strconv.ParseFloat(m[3], 64)
			c.points[key] = append(c.points[key], xy{toX(x - r), toY(y)})
			continue
		}
		p := pointsOf(e.d)
		if isCross(e) {
			mid := xy{toX((p[0].x + p[1].x) / 2), toY((p[0].y + p[1].y) / 2)}
			if n := len(c.points[key]); n > 0 && c.points[key][n-1] == mid {
				continue // the second stroke of the cross
			}
			c.points[key] = append(c.points[key], mid)
			continue
		}
		for k := range p {
			p[k] = xy{toX(p[k].x), toY(p[k].y)}
		}
		c.lines[key] = append(c.lines[key], p)
	}
	return c
}

func looks(e element) string {
	if isCross(e) {
		return "cross " + e.style
	}
	return e.style
}

// isCross tells a stroke of a cross: as long down as along, and short.
func isCross(e element) bool {
	p := pointsOf(e.d)
	if len(p) != 2 || strings.Contains(e.d, "A") {
		return false
	}
	w, h := math.Abs(p[1].x-p[0].x), math.Abs(p[1].y-p[0].y)
	return math.Abs(w-h) < 0.05 && w > 2 && w < 14
}

// unit is the unit that an axis names behind its last comma.
func (c *curves) unit(t *testing.T, label string) *lang.Unit {
	t.Helper()
	for _, s := range c.texts {
		if rest, ok := strings.CutPrefix(s, label+", "); ok {
			u, ok := lang.LookupUnit(rest)
			if !ok {
				t.Fatalf("the axis has the unit %q, which the language does not know", rest)
			}
			return u
		}
	}
	t.Fatalf("no axis for %s among %q", label, c.texts)
	return nil
}

// far is the unit of distances, which an axis names before its words.
func (c *curves) far(t *testing.T, words string) *lang.Unit {
	t.Helper()
	for _, s := range c.texts {
		if symbol, ok := strings.CutSuffix(s, " "+words); ok {
			if u, ok := lang.LookupUnit(symbol); ok {
				return u
			}
		}
	}
	t.Fatalf("no axis of distance among %q", c.texts)
	return nil
}

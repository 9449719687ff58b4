// Package parts lists what has to be on site to build a plant: from the resolved
// plant to lines of package, name, size and quantity, each with the statements
// that ask for it. It knows no formula of the trade, no disk and no protocol.
//
// Conventions of counting, which the notes of the lines repeat:
//
//   - Headers and manifolds come in pieces as long as a frame section.
//   - Steel pipe over the size of the limit flanged-above is flanged: each joint
//     has one gasket and the bolts of its flange. Smaller pipe is threaded.
//   - A run has a support for each whole or begun spacing; a header has one more.
//   - Each piece of a flue has one seal; a connector has one more at the unit.
package parts

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"example.org/tundish/check/plant"
	"example.org/tundish/check/tables"
	"example.org/tundish/lang"
)

// The packages in which parts are delivered, in the order in which they are
// listed.
const (
	Frame      = "frame"
	UnitSets   = "unit sets"
	Gas        = "gas run"
	Headers    = "headers"
	Separation = "separation"
	Secondary  = "secondary"
	Safety     = "safety"
	Flue       = "flue"
	Condensate = "condensate"
	Air        = "air and detection"
	Electrical = "electrical"
	Insulation = "insulation"
)

var packages = [...]string{Frame, UnitSets, Gas, Headers, Separation, Secondary, Safety, Flue, Condensate, Air, Electrical, Insulation}

// Why is one reason for a line: the statement that asks for so many.
type Why struct {
	Address  string // "Shut-1", "U1..U8.pump"
	File     string
	Line     int         // 1-based
	Quantity float64     // share of the line
	Note     string      // what is counted there
	Part     *plant.Part // the first part that asks
}

// Line is one kind of part.
type Line struct {
	Package  string
	Name     string
	Size     string  // as the specification writes sizes; empty for a part without one
	Quantity float64 // in Unit
	Unit     string  // "off", "m" or "ft"
	Why      []Why
}

// Gap is something that could not be counted because the text does not say it.
type Gap struct {
	Address string
	File    string
	Line    int
	Needs   string // "the length of G1"
}

// List is the complete list of a plant. What stands under Gaps is not in Lines:
// a list with gaps is not complete.
type List struct {
	Lines []Line
	Gaps  []Gap
}

// Of counts the parts of a plant. Lines stand by package, then in the order in
// which the text asks for them. The result is never nil.
func Of(p *plant.Plant) *List {
	c := &counter{p: p, at: map[key]int{}, gaps: map[Gap]bool{}}
	if p.US() {
		c.us = true
	}
	c.flanged = tables.LimitOf("flanged-above").Num
	for _, count := range [...]func(*counter){frame, units, gasRun, headers, separation, secondary, safety, flue, condensate, air, electrical, insulation} {
		count(c)
	}
	slices.SortStableFunc(c.list.Lines, func(a, b Line) int {
		return cmp.Compare(slices.Index(packages[:], a.Package), slices.Index(packages[:], b.Package))
	})
	return &c.list
}

type key struct{ pkg, name, size, unit string }

type counter struct {
	p       *plant.Plant
	us      bool
	flanged float64 // m, over which a pipe is flanged
	list    List
	at      map[key]int
	gaps    map[Gap]bool
}

// add counts n of a part because of a statement.
func (c *counter) add(pkg, name, size string, n float64, unit string, from *plant.Part, note string) {
	if n == 0 || from == nil || from.Stmt == nil {
		return
	}
	k := key{pkg, name, size, unit}
	i, ok := c.at[k]
	if !ok {
		i = len(c.list.Lines)
		c.at[k] = i
		c.list.Lines = append(c.list.Lines, Line{Package: pkg, Name: name, Size: size, Unit: unit})
	}
	l := &c.list.Lines[i]
	l.Quantity += n
	file, line := place(from)
	for j := range l.Why {
		if w := &l.Why[j]; w.File == file && w.Line == line && w.Note == note {
			w.Quantity += n
			w.Address = Span(from, w.Address)
			return
		}
	}
	l.Why = append(l.Why, Why{Address: from.Address(), File: file, Line: line, Quantity: n, Note: note, Part: from})
}

// off counts whole parts.
func (c *counter) off(pkg, name, size string, n float64, from *plant.Part, note string) {
	c.add(pkg, name, size, n, "off", from, note)
}

// length counts meters, or feet in a plant that speaks US units.
func (c *counter) length(pkg, name, size string, meters float64, from *plant.Part, note string) {
	if c.us {
		c.add(pkg, name, size, meters/0.3048, "ft", from, note)
		return
	}
	c.add(pkg, name, size, meters, "m", from, note)
}

func (c *counter) gap(part *plant.Part, needs string) {
	file, line := place(part)
	g := Gap{Address: part.Address(), File: file, Line: line, Needs: needs}
	if !c.gaps[g] {
		c.gaps[g] = true
		c.list.Gaps = append(c.list.Gaps, g)
	}
}

func place(p *plant.Part) (file string, line int) {
	if p == nil || p.Stmt == nil || p.File == nil {
		return "", 0
	}
	line, _ = p.File.Source.Position(p.Span().Start)
	return p.File.Source.Name, line
}

// Span names the members of a group by the first and the last one seen:
// "U1..U8.pump". so is what was said so far.
func Span(last *plant.Part, so string) string {
	first, tail, group := strings.Cut(so, "..")
	if group {
		if i := strings.IndexByte(tail, '.'); i >= 0 {
			first += tail[i:]
		}
	}
	if first == last.Address() {
		return first
	}
	a, aTail, ok1 := strings.Cut(first, ".")
	b, bTail, ok2 := strings.Cut(last.Address(), ".")
	switch {
	case ok1 && ok2 && aTail == bTail:
		return a + ".." + b + "." + aTail
	case !ok1 && !ok2:
		return a + ".." + b
	}
	return so
}

// size is the size of a part as written; empty and a gap when it is not stated.
func (c *counter) size(part *plant.Part) string {
	if v := part.Get("size"); v.Known() {
		return v.Word
	}
	c.gap(part, "the size of "+part.Label())
	return ""
}

// count is a stated number of parts, one when nothing is stated.
func count(part *plant.Part, slot string) float64 {
	if v := part.Get(slot); v.Known() {
		return v.Num
	}
	return 1
}

// stated is a stated number of fittings, none when nothing is stated: a run
// lists the fittings that it has.
func stated(part *plant.Part, slot string) float64 {
	if v := part.Get(slot); v.Known() {
		return v.Num
	}
	return 0
}

// has is the first part of that kind in a block, nil also when the text says none.
func has(block *plant.Part, kind string) *plant.Part {
	c := block.Child(kind)
	if c == nil || c.First().Absent() {
		return nil
	}
	return c
}

// text prints a quantity in the unit in which it is written.
func (c *counter) text(v plant.Value) string { return written(v, v.Num) }

func written(v plant.Value, num float64) string {
	if !v.Known() || v.Slot == nil {
		return ""
	}
	if v.Field != nil && len(v.Field.Values) > 0 {
		if e := v.Field.Values[0].Expr; e != nil && e.UnitText != "" {
			return lang.In(num, e.UnitText)
		}
	}
	return lang.Quantity(num, v.Slot.Dim, lang.Metric)
}

func both(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + " " + b
}

func plural(n int, one string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + one + "s"
}

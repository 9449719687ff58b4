// Package sizing looks for the smallest standard sizes with which a plant keeps
// every rule: it changes the text, lets the engine judge it, and keeps what the
// rules bear. It knows no formula of its own, so a size that it proposes has
// passed exactly what the linter checks.
package sizing

import (
	"slices"
	"sort"
	"strconv"

	"example.org/tundish/check/calc/pipe"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/tables"
	"example.org/tundish/lang"
)

// choice is one value of the text that may be changed, with the standard sizes
// it may take. A group of parts written as one statement is one choice.
type choice struct {
	part    *plant.Part // the first part of the statement
	span    lang.Span   // of the value in the file
	options []option    // rising
	from    int         // option as written
	now     int
	least   int         // options under this are smaller than the unit's own connection
	weight  float64     // what a step costs, by size: length times the number of parts
	follow  []lang.Span // sizes of fittings that go with it
	feeder  *choice     // gas pipe that leads to it: never smaller than it
}

type option struct {
	text string
	num  float64 // SI
}

// text of the option that is taken now.
func (c *choice) text() string { return c.options[c.now].text }

// choices lists what may be sized: gas pipes, water pipes and headers, flue
// pieces, expansion vessels, safety valves, their discharge, and openings.
func choices(p *plant.Plant) []*choice {
	var out []*choice
	var last *lang.Statement
	for _, part := range p.All {
		if part.Stmt == nil || part.Owner == nil || part.Stmt == last || part.Bound == nil {
			continue
		}
		last = part.Stmt
		if c := choiceOf(p, part); c != nil {
			out = append(out, c)
		}
	}
	for _, c := range out {
		if c.part.Owner.Kind == "gas-run" {
			c.feeder = feederOf(out, c)
		}
	}
	return out
}

// Sizable tells whether the statement that begins on a line, counted from 0, has
// a size that Propose can change, and the part's name or the group as written.
func Sizable(p *plant.Plant, line int) (part string, ok bool) {
	for _, part := range p.All {
		if part.Stmt == nil || part.Owner == nil || part.Bound == nil || part.File != p.File || p.File.Source.LineOf(part.Stmt.Base) != line {
			continue
		}
		if choiceOf(p, part) != nil {
			return groupName(part), true
		}
	}
	return "", false
}

// feederOf finds the gas pipe that leads to a part, through what stands in the
// line between them.
func feederOf(list []*choice, c *choice) *choice {
	at := c.part
	for range 16 { // a run that bites its tail ends here
		ref, ok := at.Ref("from")
		if !ok {
			for _, o := range list {
				for _, r := range o.part.Refs("to") {
					if r.Part == at && o != c {
						return o
					}
				}
			}
			return nil
		}
		for _, o := range list {
			if o.part == ref.Part {
				return o
			}
		}
		at = ref.Part
	}
	return nil
}

func choiceOf(p *plant.Plant, part *plant.Part) *choice {
	slot := "size"
	var options []option
	switch part.Owner.Kind + " " + part.Row.Keyword {
	case "gas-run pipe", "gas-run manifold", "gas-run drop", "headers header", "headers branch", "headers pipe", "secondary pipe", "safety discharge":
		options = pipeOptions(part)
	case "flue connector", "flue header", "flue run", "flue riser":
		options = tableOptions("flue-bore", "DN")
	case "safety relief":
		options = tableOptions("relief-bore", "DN")
	case "safety vessel":
		slot, options = "volume", unitOptions(part, "volume", "vessel-volume-l", "vessel-volume-gal")
	case "air opening":
		slot, options = "free", unitOptions(part, "free", "opening-area-cm2", "opening-area-in2")
	}
	v := part.Get(slot)
	if len(options) == 0 || !v.Known() || v.Field == nil || v.File != p.File || v.Field.Values[0].Expr == nil {
		return nil
	}
	e := v.Field.Values[0].Expr
	c := &choice{part: part, span: v.Stmt.Abs(e.Span), options: options, from: -1, weight: 1}
	for i, o := range options {
		if o.num >= v.Num*(1-1e-6) && o.num <= v.Num*(1+1e-6) {
			c.from = i
		}
	}
	if c.from < 0 {
		if slot == "size" {
			return nil // a size that the tables of its material lack: nothing to step along
		}
		// A volume or an area may be any; what is written stands among the rest.
		at := sort.Search(len(options), func(i int) bool { return options[i].num > v.Num })
		c.options = slices.Insert(options, at, option{v.Stmt.Head.Text[e.Span.Start:e.Span.End], v.Num})
		c.from = at
	}
	c.now = c.from
	if l := part.Get("length"); l.Known() && l.Num > 0 {
		c.weight = l.Num * float64(max(part.Of, 1))
	}
	c.least = leastOption(part, c.options)
	if slot == "size" {
		c.follow = followers(p, part, v.Num)
	}
	return c
}

func pipeOptions(part *plant.Part) []option {
	var out []option
	for _, s := range pipe.Sizes(part.Get("material").Word) {
		out = append(out, option{s.Size, s.Nominal})
	}
	return out
}

func tableOptions(id, prefix string) []option {
	s := tables.StandardSizes(id)
	out := make([]option, len(s.Values))
	for i, v := range s.Values {
		out[i] = option{prefix + strconv.FormatFloat(v, 'f', -1, 64), s.SI[i]}
	}
	return out
}

// unitOptions takes the row of sizes in the unit that the text speaks.
func unitOptions(part *plant.Part, slot string, rows ...string) []option {
	v := part.Get(slot)
	if !v.Known() || v.Field == nil {
		return nil
	}
	written := v.Field.Values[0].Expr.UnitText
	for _, id := range rows {
		s := tables.StandardSizes(id)
		if s.Unit != written {
			continue
		}
		out := make([]option, len(s.Values))
		for i, n := range s.Values {
			out[i] = option{strconv.FormatFloat(n, 'f', -1, 64) + " " + s.Unit, s.SI[i]}
		}
		return out
	}
	return nil
}

// connections are the slots of a unit's type that say how large its own
// openings are, by the statement that joins them.
var connections = map[string]string{"drop": "gas-connection", "branch": "water-connection", "connector": "spigot"}

// leastOption is the first option that is no smaller than the opening of the
// unit that the part joins; the first of all where that is not stated.
func leastOption(part *plant.Part, options []option) int {
	want := connections[part.Row.Keyword]
	if want == "" {
		return 0
	}
	bore := 0.0
	for _, slot := range [...]string{"from", "to"} {
		ref, ok := part.Ref(slot)
		if !ok || ref.Part.Kind != "unit" {
			continue
		}
		v := ref.Part.Get(want)
		if !v.Known() {
			v = ref.Part.Child("flue-data").Get(want)
		}
		if v.Known() {
			bore = v.Num
		}
	}
	for i, o := range options {
		if o.num >= bore*(1-0.03) { // 1 1/4 in and DN32 name one size
			return i
		}
	}
	return len(options) - 1
}

// followers are fittings on a part that have its size and keep it: a blank at
// its end, a strainer or valve in it.
func followers(p *plant.Plant, part *plant.Part, size float64) []lang.Span {
	var out []lang.Span
	var last *lang.Statement
	for _, f := range p.All {
		if f.Stmt == nil || f.Owner != part.Owner && f.Owner.Kind != "separation" || f == part || f.Stmt == last || f.Bound == nil {
			continue
		}
		last = f.Stmt
		v := f.Get("size")
		if !v.Known() || v.Field == nil || v.Stmt != f.Stmt || v.Num > size*(1+1e-6) || v.Num < size*(1-1e-6) {
			continue
		}
		if joined(f, part) {
			out = append(out, v.Stmt.Abs(v.Field.Values[0].Expr.Span))
		}
	}
	return out
}

// joined tells a fitting that stands in or on a part, or a valve at its end.
func joined(f, part *plant.Part) bool {
	for _, slot := range [...]string{"on", "of"} {
		if r, ok := f.Ref(slot); ok && r.Part == part {
			return true
		}
	}
	if f.Row.Keyword == "valve" {
		for _, r := range part.Refs("to") {
			if r.Part == f {
				return true
			}
		}
	}
	return false
}

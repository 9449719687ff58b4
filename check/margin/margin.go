// Package margin says how much of each limit a plant uses, and by how much the
// load, the lengths or the altitude may grow before a limit breaks. It changes
// the text and lets the engine judge it, so it knows no formula of its own.
package margin

import (
	"math"
	"sort"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// Input is a text, and how to judge it.
type Input struct {
	Name, Text string
	Load       plant.Loader // for catalogues; may be nil
	Cache      *lang.Cache  // may be nil
	// Check judges a resolved plant: the rules, limits and date are its own.
	Check func(*plant.Plant) *check.Report
}

// Break is the change at which a limit that holds breaks, everything else as it
// is.
type Break struct {
	Change string // "load", "altitude", or "length of gas-run"
	// Factor is how many times the loads or lengths; for the altitude it is 0.
	Factor float64
	// Altitude in m; 0 for other changes.
	Altitude float64
}

// Margin is one value held against one limit.
type Margin struct {
	check.Comparison
	Path   string
	Used   float64 // share of the limit; not a number where the limit is zero
	Breaks []Break // sorted by change; empty where nothing in the range breaks it
}

// The ranges that are searched.
const (
	mostFactor   = 4.0
	mostAltitude = 3000.0 // m
)

// Margins computes every margin of a text. A limit that is broken already has no
// breaks.
func Margins(in Input) []Margin {
	if in.Cache == nil {
		in.Cache = lang.NewCache()
	}
	f := lang.Parse(lang.NewSource(in.Name, in.Text), in.Cache)
	lang.Bind(f, lang.Language())
	p := plant.Resolve(f, in.Load)
	base := in.Check(p)
	out := make([]Margin, 0, len(base.Comparisons))
	at := map[key]int{}
	for _, c := range base.Comparisons {
		m := Margin{Comparison: c, Path: c.Quantity.Path(), Used: math.NaN()}
		if share, ok := c.Used(); ok {
			m.Used = share
		}
		at[keyOf(&c)] = len(out)
		out = append(out, m)
	}
	for _, ch := range changes(p) {
		ch.search(in, out, at)
	}
	for i := range out {
		sort.SliceStable(out[i].Breaks, func(a, b int) bool { return out[i].Breaks[a].Change < out[i].Breaks[b].Change })
	}
	return out
}

// key names a comparison across changes of the text's numbers.
type key struct {
	rule, path string
	least      bool
}

func keyOf(c *check.Comparison) key { return key{c.Rule, c.Quantity.Path(), c.AtLeast} }

// judge runs the engine on the text with other numbers and gives the limits that
// are broken.
func (in *Input) judge(edits []lang.Edit) map[key]bool {
	f := lang.Parse(lang.NewSource(in.Name, lang.Apply(in.Text, edits)), in.Cache)
	lang.Bind(f, lang.Language())
	rep := in.Check(plant.Resolve(f, in.Load))
	broken := map[key]bool{}
	for i := range rep.Comparisons {
		if c := &rep.Comparisons[i]; !c.Holds {
			broken[keyOf(c)] = true
		}
	}
	return broken
}

// change is one thing that may grow.
type change struct {
	name  string
	from  float64 // as it is: a factor of 1, or the altitude
	steps []float64
	edits func(x float64) []lang.Edit
}

// search finds for each limit where the change breaks it: first the step of a
// grid, then by halving within it.
func (ch *change) search(in Input, out []Margin, at map[key]int) {
	low := ch.from
	seen := map[key]bool{}
	for i := range out {
		if !out[i].Holds {
			seen[keyOf(&out[i].Comparison)] = true
		}
	}
	for _, high := range ch.steps {
		for k := range in.judge(ch.edits(high)) {
			i, ok := at[k]
			if !ok || seen[k] {
				continue
			}
			seen[k] = true
			x := ch.halve(in, k, low, high)
			b := Break{Change: ch.name, Factor: x}
			if ch.name == "altitude" {
				b = Break{Change: ch.name, Altitude: x}
			}
			out[i].Breaks = append(out[i].Breaks, b)
		}
		low = high
	}
}

func (ch *change) halve(in Input, k key, low, high float64) float64 {
	for range 10 { // to a thousandth of the step
		mid := (low + high) / 2
		if in.judge(ch.edits(mid))[k] {
			high = mid
		} else {
			low = mid
		}
	}
	return high
}

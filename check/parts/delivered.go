package parts

import (
	"math"
	"sort"

	"example.org/tundish/lang"
)

// The kinds of difference between what is needed and what arrived.
const (
	Short     = "short"
	Surplus   = "surplus"
	WrongSize = "wrong size"
	Foreign   = "not in this plant"
	WrongUnit = "wrong unit"
)

// Difference is one way in which a delivery is not what the plant needs.
type Difference struct {
	Kind     string
	Name     string
	Size     string  // needed, or delivered where none is needed
	GotSize  string  // delivered instead of Size, for WrongSize
	Quantity float64 // by which it differs
	Needed   float64
	Got      float64
	Unit     string
	Lines    []int  // of the delivery list
	Meant    string // a like name of the list, for Foreign
	Why      []Why  // what asks for the part
}

type tally struct {
	name, size, unit string
	needed, got      float64
	lines            []int
	why              []Why
	wanted           bool
}

const meterPerFoot = 0.3048

// Compare says where a delivery differs from the list, in the order of the list
// and then of the delivery. Parts are told by name and size, whatever package
// they came in.
func Compare(list *List, items []Item) []Difference {
	var order []*tally
	at := map[string]*tally{}
	names, byName := []string{}, map[string][]*tally{}
	find := func(name, size, unit string) *tally {
		k := normal(name) + "\x00" + normal(size)
		t := at[k]
		if t == nil {
			t = &tally{name: name, size: size, unit: unit}
			at[k] = t
			order = append(order, t)
			n := normal(name)
			if byName[n] == nil {
				names = append(names, n)
			}
			byName[n] = append(byName[n], t)
		}
		return t
	}
	for i := range list.Lines {
		l := &list.Lines[i]
		t := find(l.Name, l.Size, l.Unit)
		t.needed += l.Quantity
		t.why = append(t.why, l.Why...)
		t.wanted = true
	}
	known := append([]string(nil), names...)
	sort.Strings(known)
	var out []Difference
	for i := range items {
		it := &items[i]
		t := find(it.Part, it.Size, it.Unit)
		n, ok := inUnit(it, t)
		if !ok {
			out = append(out, Difference{Kind: WrongUnit, Name: t.name, Size: t.size, Quantity: it.Quantity, Needed: t.needed, Unit: t.unit, Lines: []int{it.Line}, Meant: it.Unit})
			continue
		}
		t.got += n
		t.lines = append(t.lines, it.Line)
	}
	for _, n := range names {
		out = append(out, judge(byName[n], known)...)
	}
	return out
}

// inUnit is what arrived in the unit of the list.
func inUnit(it *Item, t *tally) (float64, bool) {
	switch {
	case it.Unit == "" || t.unit == "" || it.Unit == t.unit:
		return it.Quantity, true
	case it.Unit == "m" && t.unit == "ft":
		return it.Quantity / meterPerFoot, true
	case it.Unit == "ft" && t.unit == "m":
		return it.Quantity * meterPerFoot, true
	}
	return 0, false
}

// judge compares the sizes of one name: what one size lacks and another has too
// many of came in the wrong size.
func judge(list []*tally, known []string) []Difference {
	var out []Difference
	anyWanted := false
	over := make([]float64, len(list))
	for i, t := range list {
		anyWanted = anyWanted || t.wanted
		if d := t.got - t.needed; math.Abs(d) > 1e-6*math.Max(1, t.needed) {
			over[i] = d
		}
	}
	for i, t := range list {
		for j, other := range list {
			if over[i] >= 0 {
				break
			}
			if over[j] <= 0 {
				continue
			}
			n := math.Min(-over[i], over[j])
			over[i] += n
			over[j] -= n
			out = append(out, Difference{Kind: WrongSize, Name: t.name, Size: t.size, GotSize: other.size, Quantity: n, Needed: t.needed, Got: t.got, Unit: t.unit, Lines: other.lines, Why: t.why})
		}
	}
	for i, t := range list {
		d := Difference{Kind: Surplus, Name: t.name, Size: t.size, Quantity: math.Abs(over[i]), Needed: t.needed, Got: t.got, Unit: t.unit, Lines: t.lines, Why: t.why}
		switch {
		case over[i] == 0:
			continue
		case over[i] < 0:
			d.Kind = Short
		case !anyWanted:
			d.Kind = Foreign
			d.Meant = lang.Suggest(normal(t.name), known)
		}
		if d.Unit == "" {
			d.Unit = "off"
		}
		out = append(out, d)
	}
	return out
}

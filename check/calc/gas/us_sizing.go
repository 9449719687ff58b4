package gas

import (
	"errors"

	"example.org/tundish/check/calc/within"
)

// Run is one section of a gas tree for the US sizing methods. Sections stand
// in order from the point of delivery: a section's parent comes before it.
type Run struct {
	Parent   int     // index of the section upstream, -1 at the point of delivery
	LengthFt float64 // with the equivalent length of its fittings
	LoadFt3H float64 // of the unit at its end, 0 where none is
}

// Sized is the answer for one section.
type Sized struct {
	LoadFt3H float64 // of everything downstream
	LengthFt float64 // with which the table was read
	Size     Size
}

// ErrTree is returned when sections do not form a tree in order.
var ErrTree = errors.New("a section of the gas tree must come after the one that feeds it, and every section needs a place in the answer")

// prepare fills load and distance from the point of delivery, and returns the
// longest distance and the section where it ends.
func prepare(runs []Run, out []Sized) (longest float64, end int, err error) {
	if len(out) < len(runs) || len(runs) == 0 {
		return 0, 0, ErrTree
	}
	for i := range runs {
		r := &runs[i]
		if r.Parent < -1 || r.Parent >= i {
			return 0, 0, ErrTree
		}
		if err := within.Range("length", r.LengthFt, 0, 5000, "ft"); err != nil {
			return 0, 0, err
		}
		if err := within.Range("load", r.LoadFt3H, 0, 1e6, "ft3/h"); err != nil {
			return 0, 0, err
		}
		out[i] = Sized{LoadFt3H: r.LoadFt3H, LengthFt: r.LengthFt, Size: sizes}
		if r.Parent >= 0 {
			out[i].LengthFt += out[r.Parent].LengthFt
		}
		if out[i].LengthFt > longest {
			longest, end = out[i].LengthFt, i
		}
	}
	for i := len(runs) - 1; i >= 0; i-- {
		if p := runs[i].Parent; p >= 0 {
			out[p].LoadFt3H += out[i].LoadFt3H
		}
	}
	return longest, end, nil
}

// LongestLength sizes every section of a tree with the length from the point
// of delivery to the farthest outlet of the whole tree. The answer goes into
// out, one place for each section. Source: SourceLongestLength.
func LongestLength(t *Table, runs []Run, out []Sized) error {
	longest, _, err := prepare(runs, out)
	if err != nil {
		return err
	}
	for i := range runs {
		out[i].LengthFt = longest
		if out[i].Size, err = t.Size(out[i].LoadFt3H, longest); err != nil {
			return err
		}
	}
	return nil
}

// BranchLength sizes the sections on the way to the farthest outlet with that
// length, and every other section with the length from the point of delivery
// to the farthest outlet behind it. The answer goes into out, one place for
// each section. Source: SourceBranchLength.
func BranchLength(t *Table, runs []Run, out []Sized) error {
	longest, end, err := prepare(runs, out)
	if err != nil {
		return err
	}
	// The distance to the far end of each section becomes the distance to the
	// farthest outlet behind it; a child comes after its parent.
	for i := len(runs) - 1; i >= 0; i-- {
		if p := runs[i].Parent; p >= 0 && out[i].LengthFt > out[p].LengthFt {
			out[p].LengthFt = out[i].LengthFt
		}
	}
	for i := end; i >= 0; i = runs[i].Parent {
		out[i].LengthFt = longest
	}
	for i := range runs {
		if out[i].Size, err = t.Size(out[i].LoadFt3H, out[i].LengthFt); err != nil {
			return err
		}
	}
	return nil
}

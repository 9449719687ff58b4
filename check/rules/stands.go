package rules

import "example.org/tundish/check/plant"

// stands tells whether a block has a part of one of the kinds. A statement with
// the word none makes no part; open is set when only the word unknown stands
// there.
func stands(block *plant.Part, kinds ...string) (there, open bool) {
	for _, kind := range kinds {
		for _, c := range block.Children(kind) {
			switch {
			case undecided(c):
				open = true
			case !c.First().Absent():
				there = true
			}
		}
	}
	return there, open && !there
}

// undecided tells a statement that says nothing but unknown: nobody knows yet
// whether there will be such a part. A part with one unknown value is there.
func undecided(part *plant.Part) bool {
	return part != nil && part.Bound != nil && len(part.Bound.Fields) == 1 && part.First().Open()
}

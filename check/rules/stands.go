package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// stands tells whether a block has a part of one of the kinds. A statement with
// the word none makes no part; open is set when only the word unknown stands
// there.
func stands(block *plant.Part, kinds ...string) (there, open bool) {
	for _, kind := range kinds {
		for _, c := range block.Children(kind) {
			switch {
			case c.Undecided():
				open = true
			case !c.First().Absent():
				there = true
			}
		}
	}
	return there, open && !there
}

// missing reports that a part lacks something, unless a statement of one of the
// kinds leaves open whether it is there or where it belongs: that may be the one.
func missing(p *check.Pass, part *plant.Part, what string, f check.Finding, kinds ...string) {
	for _, kind := range kinds {
		for _, c := range p.Plant.ByKind(kind) {
			if c.Undecided() || unplaced(c) {
				p.Unknown(part, what)
				return
			}
		}
	}
	p.Absent(part, what, f)
}

// unplaced tells a part of which it is open what it belongs or leads to.
func unplaced(part *plant.Part) bool {
	if part.Bound == nil {
		return false
	}
	for i := range part.Bound.Fields {
		s := part.Bound.Fields[i].Slot
		if (s.Type == lang.PartType || s.Type == lang.PartsType || s.Name == "end") && part.Get(s.Name).Open() {
			return true
		}
	}
	return false
}

// abroad reports whether a rule of the UK does not hold: for a plant that stands
// elsewhere, not for one of which that is unknown; see nationOpen.
func abroad(pl *plant.Plant) bool {
	land := pl.Block("basis").Get("jurisdiction")
	return !land.Is("UK") && !land.Open()
}

// nationOpen says of a part that it cannot be judged while the jurisdiction is
// unknown: the codes differ in what they ask of it.
func nationOpen(p *check.Pass, part *plant.Part) bool {
	if !p.Plant.Block("basis").Get("jurisdiction").Open() {
		return false
	}
	if part != nil {
		p.Unknown(part, "the jurisdiction")
	}
	return true
}

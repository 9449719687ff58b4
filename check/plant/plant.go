package plant

import (
	"strings"

	"example.org/tundish/lang"
)

// Plant is one resolved specification with the catalogues it uses. It is
// immutable after Resolve and safe for concurrent readers.
type Plant struct {
	File       *lang.File
	Kind       string // "plant", "catalogue", "record" or "project"
	Root       *Part
	All        []*Part          // parts of this file, in order of text
	Types      map[string]*Part // of the catalogues; only those that a part follows have their Parts
	Catalogues []*lang.File
	Problems   []FileProblem // names that do not bind, in this file and its catalogues
	Of         *Plant        // for a record: the plant it belongs to, nil if not to be had
	// Built is, for a record that says what was built otherwise, the plant as it
	// stands; its parts have the IDs of those of Of. Nil without such a change.
	Built     *Plant
	NotBuilt  []*Part // changes that could not be put into the text of the plant
	memory    *memory
	byName    map[string]*Part // names, and addresses that do not follow from the owner's
	byKind    [][]*Part        // by the number of the kind or keyword
	units     []*Part
	basis     *Part
	us        bool
	repeats   bool // a name stands for two parts
	unitGroup *Part
	damage    damage
}

// FileProblem is a problem together with the file it stands in.
type FileProblem struct {
	File *lang.File
	lang.Problem
}

// Find gives the part with that name or address ("U3", "U3.damper", "basis");
// nil if there is none.
func (p *Plant) Find(name string) *Part {
	if part := p.byName[name]; part != nil {
		return part
	}
	dot := strings.LastIndexByte(name, '.')
	if dot < 0 {
		return nil
	}
	return p.under(p.Find(name[:dot]), name, name[dot+1:])
}

// under finds the part of that address in the block of its owner.
func (p *Plant) under(owner *Part, address, keyword string) *Part {
	if owner == nil {
		return nil
	}
	if !owner.holds.Lacks(keyword) {
		for _, c := range owner.Parts {
			if c.Row.Keyword == keyword && c.addressed(address) {
				return c
			}
		}
	}
	if owner.Name == "" || p.repeats { // several owners may have this address
		for _, part := range p.All {
			if part.Row.Keyword == keyword && part.addressed(address) {
				return part
			}
		}
	}
	return nil
}

// ByKind gives all parts of a kind in order of text. The slice is shared.
func (p *Plant) ByKind(kind string) []*Part {
	if n, ok := lang.Language().Kind(kind); ok && n < len(p.byKind) {
		return p.byKind[n]
	}
	return nil
}

// One gives the first part of a kind; nil if there is none.
func (p *Plant) One(kind string) *Part {
	if list := p.ByKind(kind); len(list) > 0 {
		return list[0]
	}
	return nil
}

// Units are the heat generators in order of text.
func (p *Plant) Units() []*Part { return p.units }

// US reports whether the basis states the United States as jurisdiction.
func (p *Plant) US() bool { return p.us }

// UnitGroup is the part that stands for all units together ("units.output.total");
// nil without units.
func (p *Plant) UnitGroup() *Part { return p.unitGroup }

// Block is the first block of that keyword at the top of the file ("gas-run");
// nil if there is none. A fact of the same word inside another block, as the
// secondary temperatures of the basis, is not meant.
func (p *Plant) Block(keyword string) *Part {
	if keyword == "basis" {
		return p.basis
	}
	for _, part := range p.ByKind(keyword) {
		if part.Owner == p.Root {
			return part
		}
	}
	return nil
}

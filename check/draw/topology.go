package draw

import (
	"example.org/tundish/check/plant"
)

// topology is what the schematic and the other drawings ask of a plant.
type topology struct {
	p     *plant.Plant
	units []*plant.Part // in the order of the drawing
	gas   []*plant.Part // the gas run from the supply to the manifold
	main  *plant.Part   // the manifold
	flow  *plant.Part   // flow header
	ret   *plant.Part   // return header
	rowOf map[*plant.Part]*plant.Part
}

func newTopology(p *plant.Plant) *topology {
	t := &topology{p: p, rowOf: map[*plant.Part]*plant.Part{}}
	if run := p.Block("gas-run"); run != nil {
		t.main = run.Child("manifold")
		t.gas = chain(run, t.main)
	}
	if h := p.Block("headers"); h != nil {
		for _, part := range h.Children("header") {
			switch {
			case refersKind(part, "to", "unit"):
				t.ret = first(t.ret, part)
			case refersKind(part, "from", "unit"):
				t.flow = first(t.flow, part)
			}
		}
	}
	for _, row := range p.ByKind("row") {
		for _, r := range row.Refs("units") {
			t.rowOf[r.Part] = row
		}
	}
	t.order()
	return t
}

func first(have, part *plant.Part) *plant.Part {
	if have != nil {
		return have
	}
	return part
}

func refersKind(part *plant.Part, slot, kind string) bool {
	for _, r := range part.Refs(slot) {
		if r.Part.Kind == kind {
			return true
		}
	}
	return false
}

// order puts the units as the gas manifold feeds them, then as the flow header
// takes them on; units that neither names follow in order of text.
func (t *topology) order() {
	seen := map[*plant.Part]bool{}
	add := func(refs []plant.Ref) {
		for _, r := range refs {
			if r.Part.Kind == "unit" && !seen[r.Part] {
				seen[r.Part] = true
				t.units = append(t.units, r.Part)
			}
		}
	}
	if t.main != nil {
		add(t.main.Refs("feeds"))
	}
	for _, take := range t.p.ByKind("take-off") {
		add(take.Refs("units"))
	}
	for _, u := range t.p.Units() {
		add([]plant.Ref{{Part: u}})
	}
}

// chain follows a run backwards from its end. Parts that nothing links to, as a
// regulator before the meter, are put in front in order of text.
func chain(run, end *plant.Part) []*plant.Part {
	var out []*plant.Part
	seen := map[*plant.Part]bool{end: true}
	var inline []*plant.Part
	for _, c := range run.Parts {
		switch c.Kind {
		case "regulator", "meter", "booster", "filter", "valve", "pipe":
			if c.Name != "" && len(c.Refs("on")) == 0 {
				inline = append(inline, c)
			}
		}
	}
	for at := end; at != nil; {
		var before *plant.Part
		if ref, ok := at.Ref("from"); ok && !seen[ref.Part] {
			before = ref.Part
		}
		for _, c := range inline {
			if before == nil && !seen[c] && refersTo(c, "to", at) {
				before = c
			}
		}
		if before != nil {
			seen[before] = true
			out = append([]*plant.Part{before}, out...)
		}
		at = before
	}
	var loose []*plant.Part
	for _, c := range inline {
		if !seen[c] {
			loose = append(loose, c)
		}
	}
	return append(loose, out...)
}

func refersTo(part *plant.Part, slot string, target *plant.Part) bool {
	for _, r := range part.Refs(slot) {
		if r.Part == target {
			return true
		}
	}
	return false
}

// linked finds the part of a kind in a block that joins this unit.
func linked(block *plant.Part, kind, slot string, unit *plant.Part) *plant.Part {
	if block == nil {
		return nil
	}
	for _, c := range block.Children(kind) {
		if refersTo(c, slot, unit) {
			return c
		}
	}
	return nil
}

// branch finds the pipe between a unit and a header.
func (t *topology) branch(unit *plant.Part, slot string) *plant.Part {
	return linked(t.p.Block("headers"), "branch", slot, unit)
}

// layout is the word of the frame; empty without one.
func (t *topology) layout() string {
	return t.p.One("frame").Get("layout").Word
}

// GasRun is the gas run from the supply to the manifold, in the order of the
// flow: pipes and the parts between them.
func GasRun(p *plant.Plant) []*plant.Part { return newTopology(p).gas }

// DropOf is the gas drop to a unit; nil without one.
func DropOf(p *plant.Plant, unit *plant.Part) *plant.Part {
	return linked(p.Block("gas-run"), "drop", "to", unit)
}

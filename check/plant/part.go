// Package plant is the resolved model of a specification: every statement of a
// plant, catalogue or record becomes a Part, names are bound, values are in SI
// and keep their place in the text. What is not stated stays unknown. The
// package knows no formula, no rule, no protocol and no disk.
package plant

import (
	"iter"
	"strings"

	"example.org/tundish/lang"
)

// Part is one thing of the plant: a unit, a pipe, a block, or a single stated
// fact such as the altitude. A span of names makes one Part for each name.
type Part struct {
	ID    int    // position in Plant.All
	Name  string // its own name; empty for a part known by its keyword
	Kind  string // kind of part, the keyword that made it unless the schema says otherwise
	Row   *lang.Row
	Bound *lang.Bound
	Stmt  *lang.Statement
	File  *lang.File // where it stands; a catalogue's part stands in the catalogue
	Index int        // position in the span it was written as
	Of    int        // length of that span, 1 for a single name
	Owner *Part
	Parts []*Part // what stands in its block
	Type  *Part   // the catalogue type it follows, nil without one
	plant *Plant
	refs  []boundRefs  // what its slots refer to
	names lang.NameSet // its kind and keyword
	holds lang.NameSet // kinds and keywords of Parts
	says  lang.NameSet // what it and its type may be asked for with an answer
}

// Origin says where a value comes from.
type Origin uint8

// The origins of a value.
const (
	Stated   Origin = iota // in the part's own statement or block
	FromType               // in the catalogue type
	Default                // from a standard or practice; Slot.DefaultFrom says which
)

// Value is one value of a part. The zero Value is silence: nobody said anything.
type Value struct {
	Given     bool // somebody said something, if only "none" or "unknown"
	State     lang.State
	Origin    Origin
	Num, Num2 float64 // SI, temperatures in degC; see lang.Dimension
	Word      string
	Slot      *lang.Slot
	Field     *lang.Field
	Stmt      *lang.Statement
	File      *lang.File
}

// Known reports whether there is a value to calculate with.
func (v Value) Known() bool { return v.Given && v.State == lang.Known }

// Absent reports a stated absence: the word none.
func (v Value) Absent() bool { return v.Given && v.State == lang.Absent }

// Open reports stated open work: the word unknown.
func (v Value) Open() bool { return v.Given && v.State == lang.ToBeFound }

// Is reports whether the value is this word.
func (v Value) Is(word string) bool { return v.Known() && v.Word == word }

// Span is the place of the value in its file; empty for a default.
func (v Value) Span() lang.Span {
	if v.Stmt == nil {
		return lang.Span{}
	}
	if v.Field == nil {
		return v.Stmt.HeadSpan()
	}
	return v.Stmt.Abs(v.Field.Span)
}

// Plant is the plant that the part belongs to.
func (p *Part) Plant() *Plant { return p.plant }

// Span is the place of the part's statement without its block.
func (p *Part) Span() lang.Span {
	if p.Stmt == nil {
		return lang.Span{}
	}
	return p.Stmt.HeadSpan()
}

// Get finds a value by the stable name of its slot: in the part's own
// statement, then as the first value of a statement of that keyword in its
// block, then in its catalogue type, then as the slot's sourced default.
func (p *Part) Get(name string) (v Value) {
	if bit := lang.NameBit(name); p != nil && p.says&bit != 0 { // most answers are no
		p.get(&v, name, bit)
	}
	return v
}

// get fills v, which is silent; a value is too large to be handed on in copies.
func (p *Part) get(v *Value, name string, bit lang.NameSet) {
	if f, in := p.field(name, bit); f != nil {
		in.value(v, f, 0)
		return
	}
	if p.Type != nil {
		if f, in := p.Type.field(name, bit); f != nil {
			in.value(v, f, 0)
			v.Origin = FromType
			return
		}
	}
	if p.Row != nil && p.Row.Defaults()&bit != 0 {
		if s := p.Row.Slot(name); s != nil {
			*v = slotDefault(s)
		}
	}
}

// field finds the field of a value and the part whose statement holds it: the
// part itself, or one in its block.
func (p *Part) field(name string, bit lang.NameSet) (*lang.Field, *Part) {
	if p.Bound != nil {
		if f := p.Bound.FieldBit(name, bit); f != nil {
			return f, p
		}
	}
	if c := p.inBlock(name, bit); c != nil {
		return c.firstField(), c
	}
	return nil, nil
}

// knows notes what the part may be asked for; its block is complete.
func (p *Part) knows() {
	p.says = p.holds
	if p.Bound != nil {
		p.says |= p.Bound.Filled()
	}
	if p.Row != nil {
		p.says |= p.Row.Defaults()
	}
	if p.Type != nil {
		p.says |= p.Type.says
	}
}

// is reports whether the part is of that kind or keyword.
func (p *Part) is(kind string, bit lang.NameSet) bool {
	return p.names&bit != 0 && (p.Kind == kind || p.Row.Keyword == kind)
}

// inBlock is the first part of that kind or keyword in the block.
func (p *Part) inBlock(kind string, bit lang.NameSet) *Part {
	if p.holds&bit == 0 {
		return nil
	}
	for _, c := range p.Parts {
		if c.is(kind, bit) {
			return c
		}
	}
	return nil
}

// First is the first value of the part's own statement, whatever its slot.
func (p *Part) First() (v Value) {
	if p != nil {
		if f := p.firstField(); f != nil {
			p.value(&v, f, 0)
		}
	}
	return v
}

// Undecided tells a statement that says nothing but unknown: nobody knows yet
// whether there will be such a part. A part with one unknown value is there.
func (p *Part) Undecided() bool {
	return p != nil && p.Bound != nil && len(p.Bound.Fields) == 1 && p.First().Open()
}

func (p *Part) firstField() *lang.Field {
	if p.Bound == nil {
		return nil
	}
	for i := range p.Bound.Fields {
		f := &p.Bound.Fields[i]
		if f.Slot.Type != lang.FlagType || len(p.Bound.Fields) == 1 {
			return f
		}
	}
	return nil
}

// value fills v, which is silent, with the value at i of a field.
func (p *Part) value(v *Value, f *lang.Field, i int) {
	v.Given, v.State, v.Slot, v.Field, v.Stmt, v.File = true, lang.Known, f.Slot, f, p.Stmt, p.File
	if i < len(f.Values) {
		x := &f.Values[i]
		v.State, v.Num, v.Num2, v.Word = x.State, x.Num, x.Num2, x.Word
	} else if f.Slot.Type == lang.FlagType {
		v.Word = f.Slot.Name
	}
}

// List gives every value of a list slot, or of a slot that may repeat.
func (p *Part) List(name string) iter.Seq[Value] {
	return func(yield func(Value) bool) { p.each(name, yield) }
}

// Count is the number of values of a list slot.
func (p *Part) Count(name string) int {
	n := 0
	for range p.List(name) {
		n++
	}
	return n
}

func (p *Part) each(name string, yield func(Value) bool) {
	if p == nil || p.says.Lacks(name) {
		return
	}
	any := false
	if p.Bound != nil {
		for i := range p.Bound.Fields {
			f := &p.Bound.Fields[i]
			if f.Slot.Name != name {
				continue
			}
			for j := range f.Values {
				any = true
				var v Value
				if p.value(&v, f, j); !yield(v) {
					return
				}
			}
		}
	}
	if !any && p.Type != nil {
		p.Type.each(name, yield)
	}
}

// Has reports whether a flag stands in the part's statement or its type's.
func (p *Part) Has(flag string) bool {
	if p == nil || p.says.Lacks(flag) {
		return false
	}
	if p.Bound != nil && p.Bound.Field(flag) != nil {
		return true
	}
	return p.Type != nil && p.Type.Has(flag)
}

// Child is the first part of that kind or keyword in the block, then in the
// type; nil if there is none.
func (p *Part) Child(kind string) *Part {
	if p == nil {
		return nil
	}
	bit := lang.NameBit(kind)
	if p.says&bit == 0 {
		return nil
	}
	if c := p.inBlock(kind, bit); c != nil {
		return c
	}
	return p.Type.Child(kind)
}

// Children are all parts of that kind or keyword in the block; those of the
// type when the block has none. The slice is shared.
func (p *Part) Children(kind string) []*Part {
	if p == nil {
		return nil
	}
	bit := lang.NameBit(kind)
	if p.says&bit == 0 {
		return nil
	}
	if out := p.allInBlock(kind, bit); out != nil {
		return out
	}
	return p.Type.Children(kind)
}

func (p *Part) allInBlock(kind string, bit lang.NameSet) []*Part {
	if p.holds&bit == 0 {
		return nil
	}
	from, n := 0, len(p.Parts)
	for from < n && !p.Parts[from].is(kind, bit) {
		from++
	}
	to := from
	for to < n && p.Parts[to].is(kind, bit) {
		to++
	}
	if from == to {
		return nil
	}
	out := p.Parts[from:to:to] // alike parts mostly stand together
	for _, c := range p.Parts[to:] {
		if c.is(kind, bit) {
			out = append(out, c)
		}
	}
	return out
}

// Address is how values name the part: "U3", "U3.damper", "basis".
func (p *Part) Address() string {
	switch {
	case p.Name != "":
		return p.Name
	case p.Row == nil || p.Owner == nil: // the file itself
		return p.Kind
	case p.ownAddress():
		return p.Bound.Name.Text + "." + p.Row.Keyword
	case p == p.plant.unitGroup:
		return "units"
	case p.Owner.Owner == nil: // a block or fact at the top of the file
		return p.Row.Keyword
	}
	return p.Owner.Address() + "." + p.Row.Keyword
}

// ownAddress tells a statement of a record that speaks of a part: readings repeat
// for each unit.
func (p *Part) ownAddress() bool {
	return p.plant.Kind == "record" && p.Row.Name == lang.Refers && p.Bound.Name != nil
}

// addressed reports whether an address is that of the part, without putting texts
// together.
func (p *Part) addressed(address string) bool {
	switch {
	case p.Name != "" || p.Row == nil || p.Owner == nil || p == p.plant.unitGroup || p.ownAddress() || p.Owner.Owner == nil:
		return p.Address() == address
	}
	owner, ok := strings.CutSuffix(address, p.Row.Keyword)
	if !ok {
		return false
	}
	owner, ok = strings.CutSuffix(owner, ".")
	return ok && p.Owner.addressed(owner)
}

// Label is how a message names the part: its name, else owner and keyword.
func (p *Part) Label() string {
	if p == nil {
		return ""
	}
	return p.Address()
}

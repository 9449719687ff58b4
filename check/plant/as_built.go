package plant

import (
	"sort"

	"example.org/tundish/lang"
)

// builtSlots are the values that a record may say were built otherwise.
var builtSlots = [...]string{"length", "falls", "size", "bends"}

// asBuilt makes the plant that stands: the text of the design with the values
// that the record changed. What cannot be put in is kept in NotBuilt.
func (r *resolver) asBuilt() {
	p := r.plant
	if p.Of == nil || p.Kind != "record" {
		return
	}
	var edits []lang.Edit
	for _, block := range p.ByKind("as-built") {
		for _, c := range block.Children("changed") {
			part := c.Subject()
			if part == nil {
				continue // the name has its own problem
			}
			for _, slot := range builtSlots {
				f := c.Bound.Field(slot)
				if f == nil || len(f.Values) == 0 || f.Values[0].Expr == nil {
					continue
				}
				span, ok := p.Of.valueSpan(part, slot)
				if !ok {
					p.NotBuilt = append(p.NotBuilt, c)
					continue
				}
				e := f.Values[0].Expr.Span
				edits = append(edits, lang.Edit{Span: span, NewText: c.Stmt.Head.Text[e.Start:e.End]})
			}
		}
	}
	if len(edits) == 0 {
		return
	}
	sort.Slice(edits, func(i, j int) bool { return edits[i].Span.Start > edits[j].Span.Start })
	text, before := p.Of.File.Source.Text, len(p.Of.File.Source.Text)+1
	for _, e := range edits {
		if e.Span.End > before {
			return // the same value twice: the record contradicts itself
		}
		text, before = text[:e.Span.Start]+e.NewText+text[e.Span.End:], e.Span.Start
	}
	f := lang.Parse(lang.NewSource(p.Of.File.Source.Name, text), nil)
	lang.Bind(f, lang.Language())
	built := Resolve(f, r.load)
	if !built.Damaged() && len(built.All) == len(p.Of.All) {
		p.Built = built
	}
}

// valueSpan is the place of a value in the plant's own text; not for a value
// that stands for a whole group, or in a catalogue.
func (p *Plant) valueSpan(part *Part, slot string) (lang.Span, bool) {
	if part.File != p.File || part.Of > 1 || part.Bound == nil {
		return lang.Span{}, false
	}
	f := part.Bound.Field(slot)
	if f == nil || len(f.Values) != 1 || f.Values[0].Expr == nil {
		return lang.Span{}, false
	}
	return part.Stmt.Abs(f.Values[0].Expr.Span), true
}

// Subject is the first part that the statement speaks of; nil where the name
// does not bind.
func (p *Part) Subject() *Part {
	if s := p.Subjects(); len(s) > 0 {
		return s[0].Part
	}
	return nil
}

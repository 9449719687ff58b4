package lang

import (
	"sort"
	"strings"
)

// formatColumn is where the values of a statement in a block begin: fixed, so
// that a longer name somewhere else moves no other line.
const formatColumn = 16

// Format gives the canonical text of a file. Nothing is lost: comments, order,
// single blank lines and every text stay; labelled values go to the order of
// the schema. A statement that cannot be read stays as it is, and a file whose
// braces do not match is given back unchanged. Formatting twice changes nothing
// more.
func Format(f *File) string {
	for i := range f.Problems {
		switch f.Problems[i].Rule {
		case "brace-missing", "brace-astray", "file-too-large", "too-many-statements", "block-too-deep", "not-text":
			return f.Source.Text
		}
	}
	p := printer{f: f, text: f.Source.Text, lastLine: -1}
	p.block(f.Statements, 0)
	p.commentsBefore(len(p.text), 0)
	out := p.b.String()
	if out == "" {
		return ""
	}
	return strings.TrimRight(out, "\n") + "\n"
}

type printer struct {
	f        *File
	text     string
	b        strings.Builder
	comment  int // next comment to print
	lastLine int // line of the source on which the last printed thing ended
	fresh    bool
}

func (p *printer) line(offset int) int { return p.f.Source.LineOf(offset) }

// gap keeps one blank line where the source had at least one, but none at the
// start of a block.
func (p *printer) gap(offset int) {
	if p.lastLine >= 0 && !p.fresh && p.line(offset)-p.lastLine > 1 {
		p.b.WriteByte('\n')
	}
	p.fresh = false
}

func (p *printer) indent(depth int) {
	for range depth {
		p.b.WriteString("  ")
	}
}

// commentsBefore prints the comments with a line of their own that stand before
// an offset.
func (p *printer) commentsBefore(offset, depth int) {
	for p.comment < len(p.f.Comments) && p.f.Comments[p.comment].Span.Start < offset {
		c := p.f.Comments[p.comment]
		p.comment++
		p.gap(c.Span.Start)
		p.indent(depth)
		p.b.WriteString(strings.TrimRight(p.text[c.Span.Start:c.Span.End], " \t\r"))
		p.b.WriteByte('\n')
		p.lastLine = p.line(c.Span.Start)
	}
}

// trailing prints the comment that stands behind something on its line, and
// ends the line.
func (p *printer) trailing(end int) {
	p.lastLine = p.line(max(end-1, 0))
	if p.comment < len(p.f.Comments) {
		c := p.f.Comments[p.comment]
		if !c.Own && c.Span.Start >= end && p.line(c.Span.Start) == p.lastLine && onlyBlanks(p.text[end:c.Span.Start]) {
			p.b.WriteString("  ")
			p.b.WriteString(strings.TrimRight(p.text[c.Span.Start:c.Span.End], " \t\r"))
			p.comment++
		}
	}
	p.b.WriteByte('\n')
}

func onlyBlanks(s string) bool { return strings.Trim(s, " \t\r") == "" }

func (p *printer) block(list []*Statement, depth int) {
	for _, st := range list {
		p.statement(st, depth)
	}
}

func (p *printer) statement(st *Statement, depth int) {
	p.commentsBefore(st.Base, depth)
	p.gap(st.Base)
	p.indent(depth)
	head := HeadText(st, depth > 0)
	p.b.WriteString(head)
	inside := st.HeadSpan()
	for p.comment < len(p.f.Comments) && p.f.Comments[p.comment].Span.Start < inside.End {
		p.comment++ // a comment between the lines of a bracket is in the head's own text
	}
	if st.Braces.Empty() {
		p.trailing(inside.End)
		return
	}
	p.b.WriteString(" {")
	p.trailing(st.Braces.Start + 1)
	p.fresh = true
	p.block(st.Block, depth+1)
	p.commentsBefore(st.Braces.End-1, depth+1)
	p.fresh = true // no blank line before the closing brace
	p.indent(depth)
	p.b.WriteByte('}')
	p.trailing(st.Braces.End)
	p.fresh = false
}

// HeadText is the canonical text of a statement without its block; aligned
// puts its values at the fixed column.
func HeadText(st *Statement, aligned bool) string {
	h := st.Head
	if h.Problem != nil || st.Bound == nil || strings.ContainsAny(h.Text, "\n") || len(st.Bound.Problems) > 0 {
		return strings.TrimRight(h.Text, " \t\r")
	}
	w := headWriter{h: h}
	w.b.WriteString(h.Keyword)
	w.name(st.Bound)
	if aligned && len(st.Bound.Fields) > 0 && !strings.HasPrefix(st.Bound.Row.Keyword, "require") {
		for w.b.Len() < formatColumn-1 {
			w.b.WriteByte(' ')
		}
	}
	fields := make([]*Field, len(st.Bound.Fields))
	for i := range st.Bound.Fields {
		fields[i] = &st.Bound.Fields[i]
	}
	at := make(map[*Slot]int, len(st.Bound.Row.Slots))
	for i := range st.Bound.Row.Slots {
		at[&st.Bound.Row.Slots[i]] = i
	}
	sort.SliceStable(fields, func(i, j int) bool { return at[fields[i].Slot] < at[fields[j].Slot] })
	for _, f := range fields {
		w.field(f)
	}
	got := w.b.String()
	if !sameMeaning(got, st.Bound) { // an order that reads otherwise is not ours to choose
		w.b.Reset()
		w.b.WriteString(h.Keyword)
		w.name(st.Bound)
		for i := range st.Bound.Fields {
			w.field(&st.Bound.Fields[i])
		}
		if got = w.b.String(); !sameMeaning(got, st.Bound) {
			return strings.TrimRight(h.Text, " \t\r")
		}
	}
	return got
}

type headWriter struct {
	h *Head
	b strings.Builder
}

func (w *headWriter) name(b *Bound) {
	switch {
	case len(b.Names) > 0:
		w.b.WriteByte(' ')
		w.list(b.Names)
	case b.Name != nil:
		w.b.WriteByte(' ')
		w.expr(b.Name)
	}
}

func (w *headWriter) list(list []*Expr) {
	for i, e := range list {
		if i > 0 {
			w.b.WriteString(", ")
		}
		w.expr(e)
	}
}

func (w *headWriter) field(f *Field) {
	if n := w.b.Len(); n > 0 {
		w.b.WriteByte(' ')
	}
	if f.Slot.Type == FlagType {
		w.b.WriteString(w.h.Text[f.Span.Start:f.Span.End])
		return
	}
	if !f.Label.Empty() && f.Slot.Suffix == "" {
		w.b.WriteString(f.Slot.Label)
		w.b.WriteByte(' ')
	}
	for i := range f.Values {
		if i > 0 {
			w.b.WriteString(", ")
		}
		w.expr(f.Values[i].Expr)
	}
	if f.Slot.Suffix != "" {
		w.b.WriteByte(' ')
		w.b.WriteString(f.Slot.Suffix)
	}
}

func (w *headWriter) expr(e *Expr) {
	switch e.Kind {
	case QuantityExpr, NumberExpr:
		n := strings.Fields(w.h.Text[e.NumSpan.Start:e.NumSpan.End])
		if e.Form == Range {
			w.b.WriteString(strings.Join(n, ""))
		} else {
			w.b.WriteString(strings.Join(n, " "))
		}
		if e.UnitText != "" {
			w.b.WriteByte(' ')
			w.b.WriteString(e.UnitText)
		}
	case SpanExpr:
		w.b.WriteString(e.Text + ".." + e.Last)
		if e.Tail != "" {
			w.b.WriteString("." + e.Tail)
		}
	case BinaryExpr, CompareExpr:
		w.expr(e.L)
		w.b.WriteString(" " + e.Op + " ")
		w.expr(e.R)
	case ParenExpr:
		w.b.WriteByte('(')
		w.expr(e.L)
		w.b.WriteByte(')')
	default:
		w.b.WriteString(w.h.Text[e.Span.Start:e.Span.End])
	}
}

// sameMeaning binds a text again and compares what it says.
func sameMeaning(text string, b *Bound) bool {
	f := Parse(NewSource("", text), nil)
	if len(f.Problems) > 0 || len(f.Statements) != 1 || !f.Statements[0].Braces.Empty() {
		return false
	}
	got := bindHead(f.Statements[0].Head, b.Row)
	if len(got.Problems) != len(b.Problems) || len(got.Fields) != len(b.Fields) || len(got.Names) != len(b.Names) {
		return false
	}
	if (got.Name == nil) != (b.Name == nil) || got.Name != nil && !sameExpr(got.Name, b.Name) {
		return false
	}
	used := make([]bool, len(got.Fields))
	for i := range b.Fields {
		found := false
		for j := range got.Fields { // repeated slots keep their order
			if used[j] || got.Fields[j].Slot != b.Fields[i].Slot {
				continue
			}
			used[j] = true
			found = sameValues(got.Fields[j].Values, b.Fields[i].Values)
			break
		}
		if !found {
			return false
		}
	}
	return true
}

func sameValues(a, b []Value) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i].State != b[i].State || a[i].Num != b[i].Num || a[i].Num2 != b[i].Num2 || !sameExpr(a[i].Expr, b[i].Expr) {
			return false
		}
	}
	return true
}

func sameExpr(a, b *Expr) bool {
	if a == nil || b == nil {
		return a == b
	}
	return a.Kind == b.Kind && a.Form == b.Form && a.Num == b.Num && a.Num2 == b.Num2 && a.UnitText == b.UnitText && a.Op == b.Op && a.Last == b.Last && a.Tail == b.Tail &&
		(a.Text == b.Text || a.Kind == QuantityExpr || a.Kind == NumberExpr) && sameExpr(a.L, b.L) && sameExpr(a.R, b.R)
}

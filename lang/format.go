package lang

import (
	"slices"
	"strings"
)

// formatColumn is where the values of a statement in a block begin: fixed, so
// that a longer name somewhere else moves no other line.
const formatColumn = 16

// Format gives the canonical text of a file. Nothing is lost: comments, order,
// single blank lines and every text stay; labelled values go to the order of
// the schema. A statement that cannot be read stays as it is, and a file whose
// braces do not match is given back unchanged. Lines end as the first one does.
// Formatting twice changes nothing more.
func Format(f *File) string {
	out, _ := format(f)
	return out
}

// mark tells which line of the source a line of the formatted text comes from.
type mark struct{ out, line int }

// format also gives the marks, in order; none where the text stays unchanged.
func format(f *File) (string, []mark) {
	for i := range f.Problems {
		switch f.Problems[i].Rule {
		case "brace-missing", "brace-astray", "file-too-large", "too-many-statements", "block-too-deep", "not-text":
			return f.Source.Text, nil
		}
	}
	p := printer{f: f, text: f.Source.Text, lastLine: -1, end: "\n"}
	if i := strings.IndexByte(p.text, '\n'); i > 0 && p.text[i-1] == '\r' {
		p.end = "\r\n"
	}
	p.b.Grow(len(p.text) + len(p.text)/8)
	p.block(f.Statements, 0)
	p.commentsBefore(len(p.text), 0)
	out := strings.TrimRight(p.b.String(), "\r\n")
	if out == "" {
		return "", p.marks
	}
	return out + p.end, p.marks
}

type printer struct {
	f        *File
	text     string
	b        strings.Builder
	marks    []mark
	end      string // of a line
	comment  int    // next comment to print
	lastLine int    // line of the source on which the last printed thing ended
	fresh    bool
	head     headWriter
}

func (p *printer) line(offset int) int { return p.f.Source.LineOf(offset) }

// gap keeps one blank line where the source had at least one, but none at the
// start of a block.
func (p *printer) gap(offset int) {
	if p.lastLine >= 0 && !p.fresh && p.line(offset)-p.lastLine > 1 {
		p.b.WriteString(p.end)
	}
	p.fresh = false
}

// begin starts a line for what stands at an offset of the source.
func (p *printer) begin(offset, depth int) {
	p.marks = append(p.marks, mark{p.b.Len(), p.line(offset)})
	p.indent(depth)
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
		p.begin(c.Span.Start, depth)
		p.b.WriteString(strings.TrimRight(p.text[c.Span.Start:c.Span.End], " \t\r"))
		p.b.WriteString(p.end)
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
	p.b.WriteString(p.end)
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
	p.begin(st.Base, depth)
	head := p.head.text(st, depth > 0)
	if strings.IndexByte(head, '\n') >= 0 { // a bracket over several lines
		for strings.Contains(head, "\r\n") {
			head = strings.ReplaceAll(head, "\r\n", "\n")
		}
		head = strings.ReplaceAll(head, "\n", p.end)
	}
	if p.b.Len() == 0 && bomLen(head) > 0 {
		p.b.WriteByte(' ') // at the start of the text it would be taken for the mark of the file
	}
	p.b.WriteString(head)
	inside := st.HeadSpan()
	for p.comment < len(p.f.Comments) && p.f.Comments[p.comment].Span.Start < inside.End {
		p.comment++ // a comment between the lines of a bracket is in the head's own text
	}
	if st.Braces.Empty() {
		p.trailing(inside.End)
		return
	}
	if st.Head.Problem != nil && swallowsBrace(head) {
		p.b.WriteString(p.end)
		p.begin(st.Braces.Start, depth)
		p.b.WriteByte('{')
	} else {
		p.b.WriteString(" {")
	}
	p.trailing(st.Braces.Start + 1)
	p.fresh = true
	p.block(st.Block, depth+1)
	p.commentsBefore(st.Braces.End-1, depth+1)
	p.fresh = true // no blank line before the closing brace
	p.begin(st.Braces.End-1, depth)
	p.b.WriteByte('}')
	p.trailing(st.Braces.End)
	p.fresh = false
}

// swallowsBrace tells that a brace behind a head would become part of a text that
// is not closed.
func swallowsBrace(head string) bool {
	from := strings.LastIndexByte(head, '\n') + 1
	toks := lexLine(head, from, len(head), nil)
	return len(toks) > 0 && toks[len(toks)-1].Kind == UnclosedToken
}

// HeadText is the canonical text of a statement without its block; aligned
// puts its values at the fixed column.
func HeadText(st *Statement, aligned bool) string {
	var w headWriter
	return w.text(st, aligned)
}

// headWriter writes heads; its buffers are used again for the next one.
type headWriter struct {
	h        *Head
	b        []byte
	order    []*Field
	was, got []Token
}

func (w *headWriter) text(st *Statement, aligned bool) string {
	h, b := st.Head, st.Bound
	if h.Problem != nil || b == nil || len(b.Problems) > 0 || strings.IndexByte(h.Text, '\n') >= 0 {
		return strings.TrimRight(h.Text, " \t\r")
	}
	w.h, w.order = h, w.order[:0]
	for i := range b.Fields {
		w.order = append(w.order, &b.Fields[i])
		for j := i; j > 0 && slotIndex(b.Row, w.order[j].Slot) < slotIndex(b.Row, w.order[j-1].Slot); j-- {
			w.order[j], w.order[j-1] = w.order[j-1], w.order[j]
		}
	}
	aligned = aligned && len(b.Fields) > 0 && b.Row.Keyword != "require"
	if got := w.write(b, aligned); w.sameTokens(got) || sameMeaning(got, b) {
		return got
	}
	// An order that reads otherwise is not ours to choose.
	for i := range b.Fields {
		w.order[i] = &b.Fields[i]
	}
	if got := w.write(b, aligned); w.sameTokens(got) || sameMeaning(got, b) {
		return got
	}
	return strings.TrimRight(h.Text, " \t\r")
}

func slotIndex(r *Row, s *Slot) int {
	if i := slices.Index(r.Slots, s); i >= 0 {
		return i
	}
	return len(r.Slots)
}

func (w *headWriter) write(b *Bound, aligned bool) string {
	w.b = append(w.b[:0], w.h.Keyword...)
	w.name(b)
	for aligned && len(w.b) < formatColumn-1 {
		w.b = append(w.b, ' ')
	}
	for _, f := range w.order {
		w.field(f)
	}
	return string(w.b)
}

// sameTokens tells that a text says the same as the head, because it says it in
// the same words.
func (w *headWriter) sameTokens(got string) bool {
	old := w.h.Text
	w.was, w.got = lexLine(old, 0, len(old), w.was[:0]), lexLine(got, 0, len(got), w.got[:0])
	if len(w.was) != len(w.got) {
		return false
	}
	for i := range w.was {
		if w.was[i].Kind != w.got[i].Kind || w.was[i].Text(old) != w.got[i].Text(got) {
			return false
		}
	}
	return true
}

func (w *headWriter) name(b *Bound) {
	switch {
	case len(b.Names) > 0:
		w.b = append(w.b, ' ')
		w.list(b.Names)
	case b.Name != nil:
		w.b = append(w.b, ' ')
		w.expr(b.Name)
	}
}

func (w *headWriter) list(list []Expr) {
	for i := range list {
		if i > 0 {
			w.b = append(w.b, ", "...)
		}
		w.expr(&list[i])
	}
}

func (w *headWriter) field(f *Field) {
	if n := len(w.b); n > 0 {
		w.b = append(w.b, ' ')
	}
	if f.Slot.Type == FlagType {
		w.b = append(w.b, w.h.Text[f.Span.Start:f.Span.End]...)
		return
	}
	if !f.Label.Empty() && f.Slot.Suffix == "" {
		w.b = append(w.b, f.Slot.Label...)
		w.b = append(w.b, ' ')
	}
	for i := range f.Values {
		if i > 0 {
			w.b = append(w.b, ", "...)
		}
		w.expr(f.Values[i].Expr)
	}
	if f.Slot.Suffix != "" {
		w.b = append(w.b, ' ')
		w.b = append(w.b, f.Slot.Suffix...)
	}
}

func (w *headWriter) expr(e *Expr) {
	switch e.Kind {
	case QuantityExpr, NumberExpr:
		n := strings.Fields(w.h.Text[e.Span.Start:e.NumSpan().End])
		if e.Form == Range {
			w.b = append(w.b, strings.Join(n, "")...)
		} else {
			w.b = append(w.b, strings.Join(n, " ")...)
		}
		if e.UnitText != "" {
			w.b = append(w.b, ' ')
			w.b = append(w.b, e.UnitText...)
		}
	case SpanExpr:
		w.b = append(w.b, e.Text+".."+e.R.Text...)
	case BinaryExpr, CompareExpr:
		w.expr(e.L)
		w.b = append(w.b, " "+e.Text+" "...)
		w.expr(e.R)
	case ParenExpr:
		w.b = append(w.b, '(')
		w.expr(e.L)
		w.b = append(w.b, ')')
	default:
		w.b = append(w.b, w.h.Text[e.Span.Start:e.Span.End]...)
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
	return a.Kind == b.Kind && a.Form == b.Form && a.Num == b.Num && a.Num2 == b.Num2 && a.UnitText == b.UnitText &&
		(a.Text == b.Text || a.Kind == QuantityExpr || a.Kind == NumberExpr) && sameExpr(a.L, b.L) && sameExpr(a.R, b.R)
}

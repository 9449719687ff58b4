package lsp

import (
	"encoding/json"
	"slices"
	"strings"

	"example.org/tundish/check/plant"
	"example.org/tundish/check/report"
	"example.org/tundish/check/rules"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = on("textDocument/hover", onDocument(func(s *Server, _ *snapshot, d *document, a *analysis, p docPosition, _ json.RawMessage) (any, error) {
	text := prose{markdown: s.client.hoverMarkdown}
	span, ok := hoverText(&text, a, s.enc.offset(d.src, p.Position))
	if !ok {
		return nil, nil
	}
	kind := "plaintext"
	if text.markdown {
		kind = "markdown"
	}
	return object{"contents": object{"kind": kind, "value": text.String()}, "range": s.enc.rangeOf(d.src, span)}, nil
}))

// hoverText says what stands under the cursor: a rule's explanation, a
// quantity's conversions, a part's computed values, a word's meaning.
func hoverText(out *prose, a *analysis, offset int) (span lang.Span, ok bool) {
	tok, ok := tokenAt(a.src, offset)
	if !ok || tok.Kind == lang.CommentToken {
		return span, false
	}
	word := tok.Text(a.src.Text)
	st := lang.StatementAt(a.rep.Plant.File, offset)
	if st == nil {
		return span, false
	}
	switch tok.Kind {
	case lang.WordToken:
		if st.Head.Keyword == "deviation" && ruleText(out, word) {
			return tok.Span, true
		}
		return tok.Span, wordText(out, a, st, word, tok.Span)
	case lang.NumberToken, lang.UnitToken, lang.PairToken:
		return quantityText(out, st, offset)
	case lang.NameToken, lang.SizeToken:
		if part := partAt(a, offset); part != nil {
			partText(out, a, part)
			return tok.Span, true
		}
	}
	return span, false
}

func ruleText(out *prose, id string) bool {
	r := rules.Find(id)
	if r == nil {
		return false
	}
	out.strong(r.ID)
	out.text(" (", r.Severity.String(), ")")
	for _, part := range []struct{ head, text string }{{"", r.Summary}, {"", r.Why}, {"Mend: ", r.Mend}, {"It does not cover: ", r.Limits}, {"Source: ", report.SourceText(r.Source())}} {
		if part.text != "" {
			out.paragraph()
			out.text(part.head, part.text)
		}
	}
	return true
}

// wordText tells what a word of the language means at its place; of a keyword
// also what was computed for its statement.
func wordText(out *prose, a *analysis, st *lang.Statement, word string, span lang.Span) bool {
	if st.Bound == nil {
		return false
	}
	row := st.Bound.Row
	if span == st.Abs(st.Head.KeySpan) {
		out.strong(row.Keyword)
		out.text(": ", row.Help)
		out.example(row.Example)
		if part := partAt(a, span.Start); part != nil {
			valuesText(out, a, part)
		}
		return true
	}
	for _, sl := range row.Slots {
		if sl.Label != word && sl.Suffix != word && !(sl.Type == lang.FlagType && sl.Name == word) && !slices.Contains(sl.Choices, word) {
			continue
		}
		out.strong(word)
		out.text(": ", sl.Help)
		if sl.Type == lang.QuantityType {
			out.text(", a ", sl.Dim.String())
		}
		if len(sl.Choices) > 0 {
			out.paragraph()
			out.text("One of ", strings.Join(sl.Choices, ", "))
		}
		return true
	}
	return false
}

// maxConversions bounds how many other units a quantity is told in.
const maxConversions = 6

// quantityText converts a quantity to the other units of its dimension.
func quantityText(out *prose, st *lang.Statement, offset int) (lang.Span, bool) {
	if st.Bound == nil {
		return lang.Span{}, false
	}
	for i := range st.Bound.Fields {
		f := &st.Bound.Fields[i]
		for j := range f.Values {
			e := f.Values[j].Expr
			if e == nil || e.Kind != lang.QuantityExpr || f.Values[j].State != lang.Known || !st.Abs(e.Span).Contains(offset) {
				continue
			}
			u, ok := lang.LookupUnit(e.UnitText)
			if !ok {
				continue
			}
			out.strong(strings.ReplaceAll(f.Slot.Name, "-", " "))
			out.text(": ", f.Slot.Help)
			var list []string
			if e.Form == lang.Single || u.Inches() {
				for _, other := range lang.UnitsOf(u.Dim, lang.Metric) {
					if other != u && len(list) < maxConversions {
						list = append(list, "= "+lang.In(lang.ToSI(e.Value(), u), other.Symbol))
					}
				}
			}
			if list != nil {
				out.paragraph()
				out.text(strings.Join(list, ", "))
			}
			return st.Abs(e.Span), true
		}
	}
	return lang.Span{}, false
}

// partText tells what a part is and its computed values.
func partText(out *prose, a *analysis, part *plant.Part) {
	out.strong(part.Label())
	out.text(": a ", part.Kind)
	if part.Row != nil {
		out.text(". ", part.Row.Help)
	}
	if part.Type != nil {
		out.paragraph()
		out.text("Type ", part.Type.Name)
	}
	valuesText(out, a, part)
}

// valuesText lists the computed values of a part with formula, numbers put in
// and source.
func valuesText(out *prose, a *analysis, part *plant.Part) {
	sys := system(a)
	a.rep.Results.Of(part, func(q *solve.Quantity) {
		out.paragraph()
		name := strings.TrimPrefix(q.Path(), part.Address()+".")
		if !q.Known() {
			out.code(name)
			out.text(" not evaluated, needs ", q.Missing)
			return
		}
		out.code(name + " = " + report.Show(q, sys))
		if q.Formula == nil {
			return
		}
		out.line()
		out.code(q.Formula.Text)
		if len(q.Inputs) > 0 {
			out.line()
			out.text("with ", report.InputsText(q, sys))
		}
		out.line()
		out.text("(", report.SourceText(q.Formula.Source), ")")
	})
}

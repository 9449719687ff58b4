package lsp

import (
	"context"
	"encoding/json"
	"fmt"
	"strings"

	"example.org/tundish/check/plant"
	"example.org/tundish/check/report"
	"example.org/tundish/check/rules"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = on("textDocument/hover", func(s *Server, _ context.Context, params json.RawMessage, at *snapshot) (any, error) {
	p, err := decode[docPosition](params)
	if err != nil {
		return nil, err
	}
	d := at.find(p.TextDocument.URI)
	if d == nil {
		return nil, nil
	}
	a := d.analyze(at)
	text, span, ok := hoverText(a, s.enc.offset(d.src, p.Position))
	if !ok {
		return nil, nil
	}
	kind := "plaintext"
	if s.client.hoverMarkdown {
		kind = "markdown"
	} else {
		text = strings.NewReplacer("**", "", "`", "").Replace(text)
	}
	return object{"contents": object{"kind": kind, "value": text}, "range": s.enc.rangeOf(d.src, span)}, nil
})

// hoverText says what stands under the cursor: a rule's explanation, a
// quantity's conversions, a part's computed values, a word's meaning.
func hoverText(a *analysis, offset int) (text string, span lang.Span, ok bool) {
	src := a.src
	tok, ok := lang.TokenAt(lang.Tokens(src.Text), offset)
	if !ok || tok.Kind == lang.CommentToken {
		return "", span, false
	}
	word := tok.Text(src.Text)
	st := lang.StatementAt(a.rep.Plant.File, offset)
	if st == nil {
		return "", span, false
	}
	switch tok.Kind {
	case lang.WordToken:
		if r := rules.Find(word); r != nil && st.Head.Keyword == "deviation" {
			return fmt.Sprintf("**%s** (%s)\n\n%s\n\n%s\n\nMend: %s\n\nSource: %s", r.ID, r.Severity, r.Summary, r.Why, r.Mend, report.SourceText(r.Source())), tok.Span, true
		}
		return wordText(a, st, word, tok.Span)
	case lang.NumberToken, lang.UnitToken, lang.PairToken:
		if t, s, ok := quantityText(st, offset); ok {
			return t, s, true
		}
	case lang.NameToken, lang.SizeToken:
		if part := partAt(a, offset); part != nil {
			if t := partText(a, part); t != "" {
				return t, tok.Span, true
			}
		}
	}
	return "", span, false
}

func wordText(a *analysis, st *lang.Statement, word string, span lang.Span) (string, lang.Span, bool) {
	if st.Bound == nil {
		return "", span, false
	}
	row := st.Bound.Row
	if span == st.Abs(st.Head.KeySpan) {
		text := "**" + row.Keyword + "**: " + row.Help + "\n\nExample: `" + strings.Split(row.Example, "\n")[0] + "`"
		if part := partAt(a, span.Start); part != nil {
			if v := valuesText(a, part, ""); v != "" {
				text += "\n\n" + v
			}
		}
		return text, span, true
	}
	for i := range row.Slots {
		sl := &row.Slots[i]
		if sl.Label != word && sl.Suffix != word && !(sl.Type == lang.FlagType && sl.Name == word) && !contains(sl.Choices, word) {
			continue
		}
		text := "**" + word + "**: " + sl.Help
		if sl.Type == lang.QuantityType {
			text += ", a " + sl.Dim.String()
		}
		if len(sl.Choices) > 0 {
			text += "\n\nOne of " + strings.Join(sl.Choices, ", ")
		}
		return text, span, true
	}
	return "", span, false
}

func contains(list []string, word string) bool {
	for _, c := range list {
		if c == word {
			return true
		}
	}
	return false
}

// quantityText converts a quantity to the other units of its dimension.
func quantityText(st *lang.Statement, offset int) (string, lang.Span, bool) {
	if st.Bound == nil {
		return "", lang.Span{}, false
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
			var b strings.Builder
			fmt.Fprintf(&b, "**%s**: %s", strings.ReplaceAll(f.Slot.Name, "-", " "), f.Slot.Help)
			if e.Form == lang.Single || u.Inches() {
				n := 0
				for _, other := range lang.UnitsOf(u.Dim, lang.Metric) {
					if other == u || n == 6 {
						continue
					}
					if n == 0 {
						b.WriteString("\n\n")
					} else {
						b.WriteString(", ")
					}
					b.WriteString("= " + lang.In(lang.ToSI(e.Value(), u), other.Symbol))
					n++
				}
			}
			return b.String(), st.Abs(e.Span), true
		}
	}
	return "", lang.Span{}, false
}

// partText tells what a part is and its computed values.
func partText(a *analysis, part *plant.Part) string {
	head := "**" + part.Label() + "**: a " + part.Kind
	if part.Row != nil {
		head += ". " + part.Row.Help
	}
	if part.Type != nil {
		head += "\n\nType " + part.Type.Name
	}
	if v := valuesText(a, part, ""); v != "" {
		head += "\n\n" + v
	}
	return head
}

// valuesText lists the computed values of a part with formula and numbers.
func valuesText(a *analysis, part *plant.Part, _ string) string {
	sys := lang.Metric
	if a.rep.Plant.US() {
		sys = lang.US
	}
	var b strings.Builder
	a.rep.Results.Of(part, func(q *solve.Quantity) {
		if b.Len() > 0 {
			b.WriteString("\n\n")
		}
		name := strings.TrimPrefix(q.Path(), part.Address+".")
		if !q.Known() {
			fmt.Fprintf(&b, "`%s` not evaluated, needs %s", name, q.Missing)
			return
		}
		fmt.Fprintf(&b, "`%s` = %s", name, report.Show(q, sys))
		if q.Formula != nil {
			fmt.Fprintf(&b, "\n%s", q.Formula.Text)
			if len(q.Inputs) > 0 {
				fmt.Fprintf(&b, "\nwith %s", report.InputsText(q, sys))
			}
			fmt.Fprintf(&b, "\n(%s)", report.SourceText(q.Formula.Source))
		}
	})
	return b.String()
}

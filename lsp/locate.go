package lsp

import (
	"strings"

	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// mention is one name in the text: a definition or a reference.
type mention struct {
	name       string // the whole address: "U3", "U3.damper", "Wall-100"
	span       lang.Span
	definition bool
	kind       string // of a reference to a type: "unit-type"; else empty
	part       string // kind of the part that a definition makes
}

// mentions lists every name of a bound file in order of text.
func mentions(f *lang.File) []mention {
	var out []mention
	lang.Walk(f, func(st *lang.Statement) bool {
		out = statementMentions(out, st)
		return true
	})
	return out
}

// statementMentions adds the names of one statement without its block.
func statementMentions(out []mention, st *lang.Statement) []mention {
	if st.Bound == nil {
		return out
	}
	row := st.Bound.Row
	add := func(e *lang.Expr, definition bool, kinds []string) {
		if e == nil {
			return
		}
		kind := ""
		for _, k := range kinds {
			if strings.HasSuffix(k, "-type") {
				kind = k
			}
		}
		walkNames(e, func(name string, s lang.Span) {
			out = append(out, mention{name, st.Abs(s), definition, kind, row.PartKind()})
		})
	}
	if n := st.Bound.Name; n != nil && len(st.Bound.Names) == 0 {
		add(n, row.Name == lang.Defines || row.Name == lang.DefinesMany || row.Name == lang.MayDefine, nil)
	}
	for i := range st.Bound.Names {
		add(&st.Bound.Names[i], false, nil)
	}
	for i := range st.Bound.Fields {
		fl := &st.Bound.Fields[i]
		switch fl.Slot.Type {
		case lang.PartType, lang.PartsType, lang.ExprType:
			for j := range fl.Values {
				add(fl.Values[j].Expr, false, fl.Slot.Refers)
			}
		}
	}
	return out
}

// walkNames calls do for each name in an expression; a span gives its two ends.
func walkNames(e *lang.Expr, do func(name string, s lang.Span)) {
	if e == nil {
		return
	}
	switch e.Kind {
	case lang.NameExpr:
		do(e.Text, e.Span)
	case lang.SpanExpr:
		do(e.Text, lang.Span{Start: e.Span.Start, End: e.Span.Start + len(e.Text)})
		last := e.Last()
		do(last, lang.Span{Start: e.R.Span.Start, End: e.R.Span.Start + len(last)})
		return
	}
	walkNames(e.L, do)
	walkNames(e.R, do)
}

// base is the part of an address before its first dot: the name itself.
func base(name string) string {
	b, _, _ := strings.Cut(name, ".")
	return b
}

// mentionAt finds the name under a cursor.
func mentionAt(f *lang.File, offset int) (mention, bool) {
	st := lang.StatementAt(f, offset)
	if st == nil {
		return mention{}, false
	}
	for _, m := range statementMentions(nil, st) {
		if m.span.Contains(offset) {
			return m, true
		}
	}
	return mention{}, false
}

// tokenAt finds the token under a cursor: of its line alone, because no token
// goes over lines.
func tokenAt(src *lang.Source, offset int) (lang.Token, bool) {
	line := src.LineOf(offset)
	start := src.LineStart(line)
	tok, ok := lang.TokenAt(lang.Tokens(lineText(src, line)), offset-start)
	tok.Span = tok.Span.Add(start)
	return tok, ok
}

// partAt finds the part that a cursor means: one named there, else the part of
// the statement under it.
func partAt(a *analysis, offset int) *plant.Part {
	p := a.rep.Plant
	if m, ok := mentionAt(p.File, offset); ok {
		name := m.name
		for name != "" {
			if part := a.part(name); part != nil {
				return part
			}
			if t := a.typeNamed(name); t != nil {
				return t
			}
			i := strings.LastIndexByte(name, '.')
			if i < 0 {
				break
			}
			name = name[:i]
		}
	}
	st := lang.StatementAt(p.File, offset)
	if st == nil {
		return nil
	}
	for _, part := range p.All {
		if part.Stmt == st {
			return part
		}
	}
	return nil
}

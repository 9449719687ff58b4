package lsp

import (
	"encoding/json"
	"strings"

	"example.org/tundish/lang"
)

var _ = on("textDocument/foldingRange", onDocument(func(s *Server, _ *snapshot, d *document, a *analysis, _ docPosition, _ json.RawMessage) (any, error) {
	out := []object{}
	lang.Walk(a.rep.Plant.File, func(st *lang.Statement) bool {
		if !st.Braces.Empty() {
			from, to := d.src.LineOf(st.Base), d.src.LineOf(max(st.Braces.End-1, 0))
			if to > from {
				out = append(out, object{"startLine": from, "endLine": to - 1})
			}
		}
		return true
	})
	return append(out, commentFolds(d.src)...), nil
}))

// commentFolds are the runs of two and more lines that hold nothing but a comment.
func commentFolds(src *lang.Source) []object {
	var out []object
	from := -1
	for line := 0; line <= src.Lines(); line++ {
		if line < src.Lines() && strings.HasPrefix(strings.TrimLeft(lineText(src, line), " \t"), "#") {
			if from < 0 {
				from = line
			}
			continue
		}
		if from >= 0 && line-from > 1 {
			out = append(out, object{"startLine": from, "endLine": line - 1, "kind": "comment"})
		}
		from = -1
	}
	return out
}

var _ = on("textDocument/selectionRange", onDocument(func(s *Server, _ *snapshot, d *document, a *analysis, _ docPosition, raw json.RawMessage) (any, error) {
	q, err := decode[struct {
		Positions []struct {
			Line      uint32 `json:"line"`
			Character uint32 `json:"character"`
		} `json:"positions"`
	}](raw)
	if err != nil {
		return nil, err
	}
	out := []object{}
	for _, pos := range q.Positions {
		p := docPosition{}
		p.Position.Line, p.Position.Character = pos.Line, pos.Character
		offset := s.enc.offset(d.src, p.Position)
		spans := []lang.Span{}
		if t, ok := tokenAt(d.src, offset); ok {
			spans = append(spans, t.Span)
		}
		for st := lang.StatementAt(a.rep.Plant.File, offset); st != nil; st = st.Parent {
			if st.HeadSpan().Contains(offset) {
				spans = append(spans, st.HeadSpan())
			}
			if !st.Braces.Empty() {
				spans = append(spans, st.Span())
			}
		}
		spans = append(spans, lang.Span{Start: 0, End: len(d.src.Text)})
		var chain object
		for i := len(spans) - 1; i >= 0; i-- {
			if chain != nil && (spans[i] == spans[i+1] || spans[i].Start < spans[i+1].Start || spans[i].End > spans[i+1].End) {
				spans[i] = spans[i+1]
				continue
			}
			o := object{"range": s.enc.rangeOf(d.src, spans[i])}
			if chain != nil {
				o["parent"] = chain
			}
			chain = o
		}
		out = append(out, chain)
	}
	return out, nil
}))

var _ = on("textDocument/documentLink", onDocument(func(s *Server, at *snapshot, d *document, a *analysis, _ docPosition, _ json.RawMessage) (any, error) {
	out := []object{}
	for _, st := range a.rep.Plant.File.Statements {
		name := usedPath(a.rep.Plant.File, st)
		if name == "" || d.path == "" {
			continue
		}
		if src, uri := s.sourceOf(at, a, name); src != nil {
			e := st.Bound.Field("file").Values[0].Expr.Span
			out = append(out, object{"range": s.enc.rangeOf(d.src, st.Abs(lang.Span{Start: e.Start + 1, End: e.End - 1})), "target": uri})
		}
	}
	return out, nil
}))

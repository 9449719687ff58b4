package lsp

import (
	"context"
	"encoding/json"
	"path"
	"strings"

	"example.org/tundish/lang"
)

// symbol kinds of the protocol, by kind of part.
func symbolKind(kind string) int {
	switch kind {
	case "unit", "pump-type", "unit-type", "exchanger-type":
		return 5 // class
	case "plant", "catalogue", "record", "project":
		return 4 // package
	case "pipe", "drop", "branch", "connector", "header", "flue-header", "riser", "manifold":
		return 8 // field
	case "person", "require", "deviation", "caution":
		return 14 // constant
	}
	return 13 // variable
}

var _ = on("textDocument/documentSymbol", onDocument(func(s *Server, _ *snapshot, d *document, a *analysis, _ docPosition, _ json.RawMessage) (any, error) {
	var build func(list []*lang.Statement) []object
	build = func(list []*lang.Statement) []object {
		out := []object{}
		for _, st := range list {
			if st.Bound == nil || st.Head.Keyword == "" {
				continue
			}
			name, sel := st.Head.Keyword, st.Head.KeySpan
			if n := st.Bound.Name; n != nil && n.Kind != lang.WordExpr {
				name = st.Head.Text[n.Span.Start:n.Span.End]
				sel = n.Span
			} else if st.Braces.Empty() && len(out) > 0 && st.Parent != nil {
				continue // small facts would drown the outline
			}
			o := object{
				"name": name, "detail": st.Head.Keyword, "kind": symbolKind(st.Bound.Row.PartKind()),
				"range": s.enc.rangeOf(d.src, st.Span()), "selectionRange": s.enc.rangeOf(d.src, st.Abs(sel)),
			}
			if kids := build(st.Block); len(kids) > 0 {
				o["children"] = kids
			}
			out = append(out, o)
		}
		return out
	}
	tree := build(a.rep.Plant.File.Statements)
	if s.client.hierarchySymbols {
		return tree, nil
	}
	flat := []object{}
	var walk func(list []object)
	walk = func(list []object) {
		for _, o := range list {
			flat = append(flat, object{"name": o["name"], "kind": o["kind"], "location": object{"uri": d.uri, "range": o["selectionRange"]}})
			if kids, ok := o["children"].([]object); ok {
				walk(kids)
			}
		}
	}
	walk(tree)
	return flat, nil
}))

// maxSymbols bounds one answer: nobody reads a longer list.
const maxSymbols = 1000

var _ = on("workspace/symbol", func(s *Server, ctx context.Context, params json.RawMessage, at *snapshot) (any, error) {
	q, err := decode[struct {
		Query         string          `json:"query"`
		WorkDoneToken json.RawMessage `json:"workDoneToken"`
	}](params)
	if err != nil {
		return nil, err
	}
	want := strings.ToLower(q.Query)
	out := []object{}
	files, _ := s.workspaceFiles(ctx, at, "Looking for parts", q.WorkDoneToken)
	for _, w := range files {
		src := w.file.Source
		for _, m := range mentions(w.file) {
			if len(out) < maxSymbols && m.definition && strings.Contains(strings.ToLower(m.name), want) {
				out = append(out, object{"name": m.name, "kind": symbolKind(m.part), "containerName": path.Base(src.Name), "location": object{"uri": w.uri, "range": s.enc.rangeOf(src, m.span)}})
			}
		}
	}
	return out, nil
})

package lsp

import (
	"context"
	"encoding/json"
	"path"
	"strconv"
	"strings"

	"go.lsp.dev/protocol"

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

// symbol is one entry of the outline.
type symbol struct {
	name, detail string
	kind         int
	at, sel      protocol.Range
	kids         []symbol
}

var _ = on("textDocument/documentSymbol", onDocument(func(s *Server, _ *snapshot, d *document, a *analysis, _ docPosition, _ json.RawMessage) (any, error) {
	tree := s.symbols(d.src, a.rep.Plant.File.Statements, false)
	if s.client.hierarchySymbols {
		return json.RawMessage(appendSymbols(nil, tree)), nil
	}
	return json.RawMessage(append(appendFlat([]byte{'['}, tree, d.uri), ']')), nil
}))

// symbols lists statements with their blocks. Small facts inside a block, without
// a name, are left out: they would drown the outline.
func (s *Server) symbols(src *lang.Source, list []*lang.Statement, inner bool) []symbol {
	var out []symbol
	for _, st := range list {
		if st.Bound == nil || st.Head.Keyword == "" {
			continue
		}
		name, sel := st.Head.Keyword, st.Head.KeySpan
		if n := st.Bound.Name; n != nil && n.Kind != lang.WordExpr {
			name, sel = st.Head.Text[n.Span.Start:n.Span.End], n.Span
		} else if st.Braces.Empty() && inner {
			continue
		}
		out = append(out, symbol{
			name: name, detail: st.Head.Keyword, kind: symbolKind(st.Bound.Row.PartKind()),
			at: s.enc.rangeOf(src, st.Span()), sel: s.enc.rangeOf(src, st.Abs(sel)), kids: s.symbols(src, st.Block, true),
		})
	}
	return out
}

func appendSymbols(b []byte, list []symbol) []byte {
	b = append(b, '[')
	for i := range list {
		if i > 0 {
			b = append(b, ',')
		}
		o := &list[i]
		b = appendString(append(b, `{"name":`...), o.name)
		b = appendString(append(b, `,"detail":`...), o.detail)
		b = strconv.AppendInt(append(b, `,"kind":`...), int64(o.kind), 10)
		b = appendRange(append(b, `,"range":`...), o.at)
		b = appendRange(append(b, `,"selectionRange":`...), o.sel)
		if len(o.kids) > 0 {
			b = appendSymbols(append(b, `,"children":`...), o.kids)
		}
		b = append(b, '}')
	}
	return append(b, ']')
}

// appendFlat is the list for clients that show no tree.
func appendFlat(b []byte, list []symbol, uri string) []byte {
	for i := range list {
		o := &list[i]
		if len(b) > 1 {
			b = append(b, ',')
		}
		b = appendString(append(b, `{"name":`...), o.name)
		b = strconv.AppendInt(append(b, `,"kind":`...), int64(o.kind), 10)
		b = appendString(append(b, `,"location":{"uri":`...), uri)
		b = append(appendRange(append(b, `,"range":`...), o.sel), `}}`...)
		b = appendFlat(b, o.kids, uri)
	}
	return b
}

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
	s.eachFile(ctx, at, "Looking for parts", q.WorkDoneToken, func(uri string, f *lang.File) {
		for _, m := range mentions(f) {
			if len(out) < maxSymbols && m.definition && strings.Contains(strings.ToLower(m.name), want) {
				out = append(out, object{"name": m.name, "kind": symbolKind(m.part), "containerName": path.Base(f.Source.Name), "location": object{"uri": uri, "range": s.enc.rangeOf(f.Source, m.span)}})
			}
		}
	})
	return out, nil
})

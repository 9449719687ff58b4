package lsp

import (
	"context"
	"encoding/json"

	"example.org/tundish/check/plant"
)

// The walk along a run: gas, water or products from part to part, told with the
// protocol's call hierarchy.
var _ = on("textDocument/prepareCallHierarchy", onDocument(func(s *Server, _ *snapshot, d *document, a *analysis, p docPosition, _ json.RawMessage) (any, error) {
	part := partAt(a, s.enc.offset(d.src, p.Position))
	if part == nil || part.Name == "" {
		return nil, nil
	}
	return []object{s.runItem(d, part)}, nil
}))

func (s *Server) runItem(d *document, part *plant.Part) object {
	sel := part.Stmt.HeadSpan()
	if part.Bound.Name != nil {
		sel = part.Stmt.Abs(part.Bound.Name.Span)
	}
	return object{"name": part.Name, "detail": part.Kind, "kind": symbolKind(part.Kind), "uri": d.uri, "range": s.enc.rangeOf(d.src, part.Stmt.HeadSpan()), "selectionRange": s.enc.rangeOf(d.src, sel), "data": part.Name}
}

func runCalls(incoming bool) feature {
	return func(s *Server, _ context.Context, params json.RawMessage, at *snapshot) (any, error) {
		q, err := decode[struct {
			Item struct {
				URI  string `json:"uri"`
				Name string `json:"name"`
			} `json:"item"`
		}](params)
		if err != nil {
			return nil, err
		}
		d := at.find(q.Item.URI)
		if d == nil {
			return nil, nil
		}
		a := d.analyze(at)
		self := a.rep.Plant.Find(q.Item.Name)
		out := []object{}
		if self == nil {
			return out, nil
		}
		add := func(part *plant.Part, field string) {
			if part == nil || part.Name == "" || part.Stmt == nil {
				return
			}
			from := self
			if incoming {
				from = part
			}
			r := s.enc.rangeOf(d.src, from.Stmt.HeadSpan())
			key := "to"
			if incoming {
				key = "from"
			}
			out = append(out, object{key: s.runItem(d, part), "fromRanges": []object{{"start": r.Start, "end": r.End}}})
		}
		mine, theirs := "to", "from"
		if incoming {
			mine, theirs = "from", "to"
		}
		for _, r := range self.Refs(mine) {
			add(r.Part, mine)
		}
		for _, part := range a.rep.Plant.All {
			for _, r := range part.Refs(theirs) {
				if r.Part == self && part != self {
					add(part, theirs)
				}
			}
		}
		return out, nil
	}
}

var (
	_ = on("callHierarchy/incomingCalls", runCalls(true))
	_ = on("callHierarchy/outgoingCalls", runCalls(false))
)

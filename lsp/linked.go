package lsp

import (
	"encoding/json"

	"example.org/tundish/lang"
)

// Linked editing changes a name and what refers to it together while it is
// typed. A name that stands in a span, as U1 in U1..U8, is no word of its own
// and is left alone.
var _ = on("textDocument/linkedEditingRange", onDocument(func(s *Server, _ *snapshot, d *document, a *analysis, p docPosition, _ json.RawMessage) (any, error) {
	name, _, ok := s.nameAt(d, a, p)
	part := a.rep.Plant.Find(name)
	if !ok || part == nil || part.Of > 1 || part.Name != name {
		return nil, nil
	}
	ranges := []object{}
	for _, m := range mentions(a.rep.Plant.File) {
		if base(m.name) == name {
			r := s.enc.rangeOf(d.src, lang.Span{Start: m.span.Start, End: m.span.Start + len(name)})
			ranges = append(ranges, object{"start": r.Start, "end": r.End})
		}
	}
	if len(ranges) < 2 {
		return nil, nil
	}
	return object{"ranges": ranges, "wordPattern": "[A-Z][A-Za-z0-9-]*"}, nil
}))

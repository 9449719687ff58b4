package lsp

import (
	"context"
	"encoding/json"
	"strings"

	"go.lsp.dev/jsonrpc2"

	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// place is a stretch of one file of the session.
type place struct {
	uri  string
	src  *lang.Source
	span lang.Span
	def  bool
}

func (s *Server) location(p place) object {
	return object{"uri": p.uri, "range": s.enc.rangeOf(p.src, p.span)}
}

// files lists the document and the catalogues it uses, each with the URI by
// which the client knows it.
func (s *Server) files(at *snapshot, d *document, a *analysis) []place {
	out := []place{{uri: d.uri, src: a.src}}
	for _, c := range a.rep.Plant.Catalogues {
		if _, uri := s.sourceOf(at, a, c.Source.Name); uri != "" {
			out = append(out, place{uri: uri, src: c.Source})
		}
	}
	return out
}

func fileOf(a *analysis, src *lang.Source) *lang.File {
	if a.rep.Plant.File.Source == src {
		return a.rep.Plant.File
	}
	for _, c := range a.rep.Plant.Catalogues {
		if c.Source == src {
			return c
		}
	}
	return nil
}

// nameAt finds the name under a position: the whole name that is defined
// somewhere, so of U3.damper the U3 when the cursor is there.
func (s *Server) nameAt(d *document, a *analysis, p docPosition) (name string, span lang.Span, ok bool) {
	m, ok := mentionAt(mentions(a.rep.Plant.File), s.enc.offset(d.src, p.Position))
	if !ok {
		return "", span, false
	}
	name = base(m.name)
	return name, lang.Span{Start: m.span.Start, End: m.span.Start + len(name)}, true
}

// occurrences finds a name in the document, its catalogues, and every open
// document that uses one of them.
func (s *Server) occurrences(at *snapshot, d *document, a *analysis, name string) []place {
	var out []place
	seen := map[string]bool{}
	scan := func(uri string, f *lang.File) {
		if seen[uri] || f == nil {
			return
		}
		seen[uri] = true
		for _, m := range mentions(f) {
			if base(m.name) == name {
				out = append(out, place{uri, f.Source, lang.Span{Start: m.span.Start, End: m.span.Start + len(name)}, m.definition})
			}
		}
	}
	for _, p := range s.files(at, d, a) {
		scan(p.uri, fileOf(a, p.src))
	}
	if a.rep.Plant.Types[name] != nil || a.rep.Plant.Kind == "catalogue" {
		for uri, other := range at.docs {
			if o := other.analyze(at); other != d && (o.uses[d.path] || sharesCatalogue(a, o)) {
				scan(uri, o.rep.Plant.File)
			}
		}
	}
	return out
}

func sharesCatalogue(a, b *analysis) bool {
	for p := range a.uses {
		if b.uses[p] {
			return true
		}
	}
	return false
}

func onDocument(f func(s *Server, at *snapshot, d *document, a *analysis, p docPosition, raw json.RawMessage) (any, error)) feature {
	return func(s *Server, _ context.Context, params json.RawMessage, at *snapshot) (any, error) {
		p, err := decode[docPosition](params)
		if err != nil {
			return nil, err
		}
		d := at.find(p.TextDocument.URI)
		if d == nil {
			return nil, nil
		}
		return f(s, at, d, d.analyze(at), p, params)
	}
}

var _ = on("textDocument/definition", onDocument(func(s *Server, at *snapshot, d *document, a *analysis, p docPosition, _ json.RawMessage) (any, error) {
	name, _, ok := s.nameAt(d, a, p)
	if !ok {
		return nil, nil
	}
	for _, o := range s.occurrences(at, d, a, name) {
		if o.def {
			return s.location(o), nil
		}
	}
	// A member of a span has no word of its own: its group defines it.
	if part := a.rep.Plant.Find(name); part != nil && part.Bound != nil && part.Bound.Name != nil {
		return s.location(place{d.uri, a.src, part.Stmt.Abs(part.Bound.Name.Span), true}), nil
	}
	return nil, nil
}))

var _ = on("textDocument/references", onDocument(func(s *Server, at *snapshot, d *document, a *analysis, p docPosition, raw json.RawMessage) (any, error) {
	ctx, err := decode[struct {
		Context struct {
			IncludeDeclaration bool `json:"includeDeclaration"`
		} `json:"context"`
	}](raw)
	if err != nil {
		return nil, err
	}
	out := []object{}
	name, _, ok := s.nameAt(d, a, p)
	if !ok {
		return out, nil
	}
	for _, o := range s.occurrences(at, d, a, name) {
		if !o.def || ctx.Context.IncludeDeclaration {
			out = append(out, s.location(o))
		}
	}
	return out, nil
}))

var _ = on("textDocument/documentHighlight", onDocument(func(s *Server, _ *snapshot, d *document, a *analysis, p docPosition, _ json.RawMessage) (any, error) {
	out := []object{}
	name, _, ok := s.nameAt(d, a, p)
	if !ok {
		return out, nil
	}
	for _, m := range mentions(a.rep.Plant.File) {
		if base(m.name) == name {
			kind := 2 // read
			if m.definition {
				kind = 3 // write
			}
			out = append(out, object{"range": s.enc.rangeOf(d.src, lang.Span{Start: m.span.Start, End: m.span.Start + len(name)}), "kind": kind})
		}
	}
	return out, nil
}))

var _ = on("textDocument/prepareRename", onDocument(func(s *Server, _ *snapshot, d *document, a *analysis, p docPosition, _ json.RawMessage) (any, error) {
	name, span, ok := s.nameAt(d, a, p)
	if !ok {
		return nil, nil
	}
	if part := a.rep.Plant.Find(name); part != nil && part.Of > 1 && part.Bound.Name != nil && part.Bound.Name.Kind == lang.SpanExpr && part.Owner.Of <= 1 {
		return nil, jsonrpc2.NewError(jsonrpc2.InvalidParams, name+" is a member of "+part.Bound.Name.Text+".."+part.Bound.Name.Last+" and has no name of its own to change")
	}
	return object{"range": s.enc.rangeOf(d.src, span), "placeholder": name}, nil
}))

var _ = on("textDocument/rename", onDocument(func(s *Server, at *snapshot, d *document, a *analysis, p docPosition, raw json.RawMessage) (any, error) {
	q, err := decode[struct {
		NewName string `json:"newName"`
	}](raw)
	if err != nil {
		return nil, err
	}
	name, _, ok := s.nameAt(d, a, p)
	if !ok {
		return nil, jsonrpc2.NewError(jsonrpc2.InvalidParams, "there is no name to change here")
	}
	if !validName(q.NewName) {
		return nil, jsonrpc2.NewError(jsonrpc2.InvalidParams, "a name starts with a capital letter and has letters, digits and hyphens; DN50 and M16 read as sizes")
	}
	if a.rep.Plant.Find(q.NewName) != nil || a.rep.Plant.Types[q.NewName] != nil {
		return nil, jsonrpc2.NewError(jsonrpc2.InvalidParams, q.NewName+" is taken already")
	}
	edits := map[string][]object{}
	for _, o := range s.occurrences(at, d, a, name) {
		edits[o.uri] = append(edits[o.uri], object{"range": s.enc.rangeOf(o.src, o.span), "newText": q.NewName})
	}
	return s.workspaceEdit(at, edits), nil
}))

func validName(name string) bool {
	toks := lang.Tokens(name)
	return len(toks) == 2 && toks[0].Kind == lang.NameToken && !strings.Contains(name, ".")
}

// workspaceEdit carries versions where the client can take them.
func (s *Server) workspaceEdit(at *snapshot, edits map[string][]object) object {
	if !s.client.documentChanges {
		return object{"changes": edits}
	}
	var list []object
	for uri, e := range edits {
		version := any(nil)
		if d := at.find(uri); d != nil {
			version = d.version
		}
		list = append(list, object{"textDocument": object{"uri": uri, "version": version}, "edits": e})
	}
	return object{"documentChanges": list}
}

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

var _ = on("workspace/symbol", func(s *Server, _ context.Context, params json.RawMessage, at *snapshot) (any, error) {
	q, err := decode[struct {
		Query string `json:"query"`
	}](params)
	if err != nil {
		return nil, err
	}
	want := strings.ToLower(q.Query)
	out := []object{}
	for uri, d := range at.docs {
		a := d.analyze(at)
		for _, part := range a.rep.Plant.All {
			if part.Name == "" || part.Bound == nil || part.Bound.Name == nil || !strings.Contains(strings.ToLower(part.Name), want) {
				continue
			}
			out = append(out, object{"name": part.Name, "kind": symbolKind(part.Kind), "containerName": a.rep.Plant.Root.Get("title").Word, "location": object{"uri": uri, "range": s.enc.rangeOf(d.src, part.Stmt.Abs(part.Bound.Name.Span))}})
		}
	}
	return out, nil
})

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
	return out, nil
}))

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
	toks := lang.Tokens(d.src.Text)
	out := []object{}
	for _, pos := range q.Positions {
		p := docPosition{}
		p.Position.Line, p.Position.Character = pos.Line, pos.Character
		offset := s.enc.offset(d.src, p.Position)
		spans := []lang.Span{}
		if t, ok := lang.TokenAt(toks, offset); ok {
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
		if st.Bound == nil || st.Head.Keyword != "use" && st.Head.Keyword != "of-plant" {
			continue
		}
		f := st.Bound.Field("file")
		if f == nil || len(f.Values) == 0 || d.path == "" {
			continue
		}
		for _, c := range a.rep.Plant.Catalogues {
			if strings.HasSuffix(c.Source.Name, strings.TrimPrefix(f.Values[0].Word, "./")) {
				_, uri := s.sourceOf(at, a, c.Source.Name)
				e := f.Values[0].Expr.Span
				out = append(out, object{"range": s.enc.rangeOf(d.src, st.Abs(lang.Span{Start: e.Start + 1, End: e.End - 1})), "target": uri})
				break
			}
		}
	}
	return out, nil
}))

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

package lsp

import (
	"context"
	"encoding/json"
	"path"
	"strings"

	"go.lsp.dev/jsonrpc2"

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

// occurrences finds a name in the document, its catalogues, and every file of
// the workspace that uses one of them.
func (s *Server) occurrences(ctx context.Context, at *snapshot, d *document, a *analysis, name string, token json.RawMessage) []place {
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
		shared := map[string]bool{d.path: true}
		for _, c := range a.rep.Plant.Catalogues {
			shared[c.Source.Name] = true
		}
		for _, w := range s.workspaceFiles(ctx, at, "Looking for "+name, token) {
			if usesAny(w.file, shared) {
				scan(w.uri, w.file)
			}
		}
	}
	return out
}

// usesAny tells a file that names one of these paths in a use statement.
func usesAny(f *lang.File, paths map[string]bool) bool {
	for _, st := range f.Statements {
		if st.Head.Keyword != "use" || st.Bound == nil {
			continue
		}
		if v := st.Bound.Field("file"); v != nil && len(v.Values) > 0 && paths[path.Join(path.Dir(f.Source.Name), v.Values[0].Word)] {
			return true
		}
	}
	return false
}

func onDocument(f func(s *Server, at *snapshot, d *document, a *analysis, p docPosition, raw json.RawMessage) (any, error)) feature {
	return onDocumentWith(func(_ context.Context, s *Server, at *snapshot, d *document, a *analysis, p docPosition, raw json.RawMessage) (any, error) {
		return f(s, at, d, a, p, raw)
	})
}

// onDocumentWith is onDocument for a feature that may take long.
func onDocumentWith(f func(ctx context.Context, s *Server, at *snapshot, d *document, a *analysis, p docPosition, raw json.RawMessage) (any, error)) feature {
	return func(s *Server, ctx context.Context, params json.RawMessage, at *snapshot) (any, error) {
		p, err := decode[docPosition](params)
		if err != nil {
			return nil, err
		}
		d := at.find(p.TextDocument.URI)
		if d == nil {
			return nil, nil
		}
		return f(ctx, s, at, d, d.analyze(at), p, params)
	}
}

var _ = on("textDocument/definition", onDocumentWith(func(ctx context.Context, s *Server, at *snapshot, d *document, a *analysis, p docPosition, _ json.RawMessage) (any, error) {
	name, _, ok := s.nameAt(d, a, p)
	if !ok {
		return nil, nil
	}
	for _, o := range s.occurrences(ctx, at, d, a, name, p.WorkDoneToken) {
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

var _ = on("textDocument/references", onDocumentWith(func(ctx context.Context, s *Server, at *snapshot, d *document, a *analysis, p docPosition, raw json.RawMessage) (any, error) {
	q, err := decode[struct {
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
	for _, o := range s.occurrences(ctx, at, d, a, name, p.WorkDoneToken) {
		if !o.def || q.Context.IncludeDeclaration {
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
		return nil, jsonrpc2.NewError(jsonrpc2.InvalidParams, name+" is a member of "+part.Bound.Name.Text+".."+part.Bound.Name.Last()+" and has no name of its own to change")
	}
	return object{"range": s.enc.rangeOf(d.src, span), "placeholder": name}, nil
}))

var _ = on("textDocument/rename", onDocumentWith(func(ctx context.Context, s *Server, at *snapshot, d *document, a *analysis, p docPosition, raw json.RawMessage) (any, error) {
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
	for _, o := range s.occurrences(ctx, at, d, a, name, p.WorkDoneToken) {
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

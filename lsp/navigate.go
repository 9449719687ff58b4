package lsp

import (
	"context"
	"encoding/json"
	"slices"
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

// reads lists the other files of an analysis: catalogues, and of a record its
// plant with the catalogues of that.
func (a *analysis) reads() []*lang.File {
	p := a.rep.Plant
	if p.Of == nil {
		return p.Catalogues
	}
	out := append(slices.Clone(p.Catalogues), p.Of.File)
	for _, c := range p.Of.Catalogues {
		if !slices.ContainsFunc(out, func(f *lang.File) bool { return f.Source.Name == c.Source.Name }) {
			out = append(out, c)
		}
	}
	return out
}

// part finds a part by its name, of a record also in its plant.
func (a *analysis) part(name string) *plant.Part {
	if p := a.rep.Plant.Find(name); p != nil || a.rep.Plant.Of == nil {
		return p
	}
	return a.rep.Plant.Of.Find(name)
}

// typeNamed finds a type of the catalogues, of a record also those of its plant.
func (a *analysis) typeNamed(name string) *plant.Part {
	if t := a.rep.Plant.Types[name]; t != nil || a.rep.Plant.Of == nil {
		return t
	}
	return a.rep.Plant.Of.Types[name]
}

// nameAt finds the name under a position: the whole name that is defined
// somewhere, so of U3.damper the U3 when the cursor is there.
func (s *Server) nameAt(d *document, a *analysis, p docPosition) (name string, span lang.Span, ok bool) {
	m, ok := mentionAt(a.rep.Plant.File, s.enc.offset(d.src, p.Position))
	if !ok {
		return "", span, false
	}
	name = base(m.name)
	return name, lang.Span{Start: m.span.Start, End: m.span.Start + len(name)}, true
}

// occurrences finds a name where it means the same: in the file that defines it,
// in the document and the files that it reads, and, when wide, in every file of
// the workspace that reads the defining one. A file that defines the name itself
// means something else by it. whole is false when not every file could be looked at.
func (s *Server) occurrences(ctx context.Context, at *snapshot, d *document, a *analysis, name string, wide bool, token json.RawMessage) (out []place, whole bool) {
	own := a.rep.Plant.File
	files := append([]*lang.File{own}, a.reads()...)
	home := own
	for _, f := range files {
		if defines(f, name) {
			home = f
			break
		}
	}
	seen := map[string]bool{}
	scan := func(uri string, f *lang.File) {
		if seen[uri] || f != home && defines(f, name) {
			return
		}
		seen[uri] = true
		for _, m := range mentions(f) {
			if base(m.name) == name {
				out = append(out, place{uri, f.Source, lang.Span{Start: m.span.Start, End: m.span.Start + len(name)}, m.definition})
			}
		}
	}
	for _, f := range files {
		if f == own {
			scan(d.uri, f)
		} else if _, uri := s.sourceOf(at, a, f.Source.Name); uri != "" {
			scan(uri, f)
		}
	}
	if !wide {
		return out, true
	}
	// Of the rest of the workspace only what may count is kept: which files each
	// one reads, and where it mentions the name.
	var others []mentioning
	whole = s.eachFile(ctx, at, "Looking for "+name, token, func(uri string, f *lang.File) {
		o := mentioning{name: f.Source.Name, reads: readsOf(f)}
		if !seen[uri] && !defines(f, name) {
			for _, m := range mentions(f) {
				if base(m.name) == name {
					o.places = append(o.places, place{uri, f.Source, lang.Span{Start: m.span.Start, End: m.span.Start + len(name)}, m.definition})
				}
			}
		}
		if len(o.reads) > 0 {
			others = append(others, o)
		}
	})
	for _, o := range usersOf(others, home.Source.Name) {
		out = append(out, o.places...)
	}
	return out, whole
}

// defines tells a file that gives a name its meaning.
func defines(f *lang.File, name string) bool {
	for _, m := range mentions(f) {
		if m.definition && m.name == name {
			return true
		}
	}
	return false
}

// mentioning is what a search keeps of one file.
type mentioning struct {
	name   string
	reads  []string
	places []place
}

// readsOf lists the paths of the files that a file reads.
func readsOf(f *lang.File) []string {
	var out []string
	for _, st := range f.Statements {
		if p := usedPath(f, st); p != "" {
			out = append(out, p)
		}
	}
	return out
}

// usersOf lists the files that read one, directly or through others.
func usersOf(all []mentioning, name string) []mentioning {
	var out []mentioning
	paths := map[string]bool{name: true}
	for grown := true; grown; {
		grown = false
		for _, o := range all {
			if !paths[o.name] && slices.ContainsFunc(o.reads, func(p string) bool { return paths[p] }) {
				paths[o.name] = true
				out = append(out, o)
				grown = true
			}
		}
	}
	return out
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
	found, _ := s.occurrences(ctx, at, d, a, name, false, nil)
	for _, o := range found {
		if o.def {
			return s.location(o), nil
		}
	}
	// A member of a span has no word of its own: its group defines it.
	if part := a.part(name); part != nil && part.Bound != nil && part.Bound.Name != nil {
		src, uri := a.src, d.uri
		if !a.own(part.File) {
			src, uri = s.sourceOf(at, a, part.File.Source.Name)
		}
		if src != nil {
			return s.location(place{uri, src, part.Stmt.Abs(part.Bound.Name.Span), true}), nil
		}
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
	found, _ := s.occurrences(ctx, at, d, a, name, true, p.WorkDoneToken)
	for _, o := range found {
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
	if err := ofSpan(a, name); err != nil {
		return nil, err
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
	if err := ofSpan(a, name); err != nil {
		return nil, err
	}
	if !validName(q.NewName) {
		return nil, jsonrpc2.NewError(jsonrpc2.InvalidParams, "a name starts with a capital letter and has letters, digits and hyphens; DN50 and M16 read as sizes")
	}
	if a.part(q.NewName) != nil || a.typeNamed(q.NewName) != nil {
		return nil, jsonrpc2.NewError(jsonrpc2.InvalidParams, q.NewName+" is taken already")
	}
	edits := map[string][]object{}
	found, whole := s.occurrences(ctx, at, d, a, name, true, p.WorkDoneToken)
	if !whole {
		return nil, jsonrpc2.NewError(codeFailed, "not every file of the workspace was looked at, so the name was changed nowhere")
	}
	for _, o := range found {
		edits[o.uri] = append(edits[o.uri], object{"range": s.enc.rangeOf(o.src, o.span), "newText": q.NewName})
	}
	return s.workspaceEdit(at, edits), nil
}))

// ofSpan refuses the name of a member of a span, as U3 of U1..U8: no word of the
// text is its own.
func ofSpan(a *analysis, name string) error {
	part := a.part(name)
	if part == nil || part.Of <= 1 || part.Bound == nil || part.Bound.Name == nil || part.Bound.Name.Kind != lang.SpanExpr || part.Owner != nil && part.Owner.Of > 1 {
		return nil
	}
	return jsonrpc2.NewError(jsonrpc2.InvalidParams, name+" is a member of "+part.Bound.Name.Text+".."+part.Bound.Name.Last()+" and has no name of its own to change")
}

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

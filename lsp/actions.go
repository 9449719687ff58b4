package lsp

import (
	"context"
	"encoding/json"
	"strings"

	"go.lsp.dev/jsonrpc2"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/report"
	"example.org/tundish/check/sizing"
	"example.org/tundish/lang"
)

var _ = on("textDocument/codeAction", onDocument(func(s *Server, at *snapshot, d *document, a *analysis, p docPosition, raw json.RawMessage) (any, error) {
	q, err := decode[struct {
		Context struct {
			Only        []string `json:"only"`
			TriggerKind int      `json:"triggerKind"`
		} `json:"context"`
	}](raw)
	if err != nil {
		return nil, err
	}
	w := s.enc.span(d.src, p.Range)
	c := actions{s: s, at: at, d: d, a: a, only: q.Context.Only, list: []object{}}
	for i := range a.rep.Findings {
		f := &a.rep.Findings[i]
		if f.File != nil && f.File != a.rep.Plant.File || !touches(f.Span, w, d.src) {
			continue
		}
		for k := range f.Fixes {
			c.fix(f, &f.Fixes[k])
		}
		if f.Source != report.LanguageSource && f.Part != "" {
			c.deviation(f)
		}
	}
	c.smallest(w, q.Context.TriggerKind == 2)
	c.fixAll()
	if !s.client.actionLiterals {
		return c.asCommands(), nil
	}
	return c.list, nil
}))

// asCommands turns the actions into commands for a client that knows no others.
func (c *actions) asCommands() []object {
	out := []object{}
	for _, a := range c.list {
		if c.s.client.applyEdit {
			out = append(out, object{"title": a["title"], "command": commandEdit, "arguments": []any{a["edit"]}})
		}
	}
	return out
}

// touches tells whether a finding stands on the lines of a window: clients ask
// with a cursor, and some without diagnostics.
func touches(f, w lang.Span, src *lang.Source) bool {
	return src.LineOf(f.Start) <= src.LineOf(w.End) && src.LineOf(firstLine(src, f).End) >= src.LineOf(w.Start)
}

type actions struct {
	s    *Server
	at   *snapshot
	d    *document
	a    *analysis
	only []string
	list []object
}

func (c *actions) wants(kind string) bool {
	if len(c.only) == 0 {
		return kind != "source.fixAll" // source actions are run when asked for
	}
	for _, o := range c.only {
		if kind == o || strings.HasPrefix(kind, o+".") || strings.HasPrefix(o, kind+".") {
			return true
		}
	}
	return false
}

// edits turns the engine's edits into the protocol's, by document.
func (c *actions) edits(list []lang.Edit) (object, bool) {
	out := map[string][]object{}
	for _, e := range list {
		src, uri := c.a.src, c.d.uri
		if e.File != "" && e.File != c.d.name {
			if src, uri = c.s.sourceOf(c.at, c.a, e.File); src == nil {
				return nil, false
			}
		}
		out[uri] = append(out[uri], object{"range": c.s.enc.rangeOf(src, e.Span), "newText": e.NewText})
	}
	return c.s.workspaceEdit(c.at, out), len(out) > 0
}

func (c *actions) add(title, kind string, preferred bool, f *check.Finding, edits []lang.Edit) {
	if !c.wants(kind) {
		return
	}
	edit, ok := c.edits(edits)
	if !ok {
		return
	}
	o := object{"title": title, "kind": kind, "edit": edit}
	if f != nil {
		o["diagnostics"] = json.RawMessage(appendDiagnostics(nil, []diagnostic{c.s.diagnostic(c.at, c.d, c.a, f)}))
	}
	if preferred && c.s.client.preferredActions {
		o["isPreferred"] = true
	}
	c.list = append(c.list, o)
}

func (c *actions) fix(f *check.Finding, fix *lang.Fix) {
	c.add(fix.Title, "quickfix", fix.Best, f, fix.Edits)
}

// deviation writes the skeleton of a stated exception; the designer fills in
// reason, person and end.
func (c *actions) deviation(f *check.Finding) {
	person := "D1"
	for _, p := range c.a.rep.Plant.ByKind("person") {
		if p.Get("role").Is("designer") {
			person = p.Name
			break
		}
	}
	part := f.Part
	if c.a.rep.Plant.Find(part) == nil {
		return
	}
	n := len(c.a.src.Text)
	text := "deviation " + f.Rule + " on " + part + " because \"\" by " + person + " until \n"
	if n > 0 && c.a.src.Text[n-1] != '\n' {
		text = "\n" + text
	}
	c.add("Write a deviation from "+f.Rule+" to be filled in", "quickfix", false, f, []lang.Edit{{Span: lang.Span{Start: n, End: n}, NewText: text}})
}

// smallest offers the smallest standard size of the statement under the cursor
// that brings no finding. To find it the plant is judged many times: a client
// that can is given the action now and the edit when the user takes it, and one
// that cannot is not kept waiting while the cursor only moves.
func (c *actions) smallest(w lang.Span, automatic bool) {
	st := lang.StatementAt(c.a.rep.Plant.File, w.Start)
	if st == nil || !c.wants("refactor.rewrite") || c.a.rep.Plant.Damaged() {
		return
	}
	line := c.a.src.LineOf(st.Base)
	part, ok := sizing.Sizable(c.a.rep.Plant, line)
	switch {
	case !ok:
	case c.s.client.lazyEdits:
		c.list = append(c.list, object{"title": "Take the smallest size of " + part + " that passes", "kind": "refactor.rewrite", "data": sizeSearch{c.d.uri, c.d.version, line}})
	case !automatic:
		for _, ch := range c.search(line) {
			c.add("Take the smallest size of "+ch.Part+" that passes: "+ch.To, "refactor.rewrite", false, nil, ch.Edits)
		}
	}
}

// search looks for the smallest size of the statement on a line.
func (c *actions) search(line int) []sizing.Change {
	return sizing.Propose(sizing.Input{
		Name: c.d.name, Text: c.a.src.Text, Load: c.at.load, Cache: c.s.cache, Only: line,
		Check: func(p *plant.Plant) *check.Report { return c.at.judge(c.d, p, map[string]bool{}) },
	}).Changes
}

// sizeSearch is an action whose edit is not looked for yet.
type sizeSearch struct {
	URI     string `json:"uri"`
	Version int32  `json:"version"`
	Line    int    `json:"line"`
}

var _ = on("codeAction/resolve", func(s *Server, _ context.Context, params json.RawMessage, at *snapshot) (any, error) {
	action, err := decode[map[string]json.RawMessage](params)
	if err != nil {
		return nil, err
	}
	q, err := decode[sizeSearch](action["data"])
	if err != nil || q.URI == "" {
		return params, nil // it is whole already
	}
	d := at.find(q.URI)
	if d == nil || d.version != q.Version {
		return nil, jsonrpc2.NewError(codeContentModified, "the text has changed since the action was offered")
	}
	c := actions{s: s, at: at, d: d, a: d.analyze(at)}
	var edits []lang.Edit
	for _, ch := range c.search(q.Line) {
		edits = append(edits, ch.Edits...)
	}
	edit, ok := c.edits(edits)
	if !ok {
		s.tell("window/showMessage", object{"type": 3, "message": "The size that stands there is the smallest that passes, or none passes."})
		return params, nil
	}
	if action["edit"], err = encode(edit); err != nil {
		return nil, err
	}
	return action, nil
})

// fixAll joins every fix that cannot change what the plant means.
func (c *actions) fixAll() {
	if !c.wants("source.fixAll") {
		return
	}
	var list []lang.Edit
	at := map[lang.Span]bool{}
	for i := range c.a.rep.Findings {
		f := &c.a.rep.Findings[i]
		for _, fix := range f.Fixes {
			if !fix.Safe {
				continue
			}
			for _, e := range fix.Edits {
				if e.File == "" && !overlaps(list, e.Span) || at[e.Span] && e.Span.Empty() {
					list = append(list, e)
					at[e.Span] = true
				}
			}
			break
		}
	}
	if len(list) > 0 {
		c.add("Fix all that is safe to fix", "source.fixAll", false, nil, list)
	}
}

func overlaps(list []lang.Edit, s lang.Span) bool {
	for _, e := range list {
		if e.Span.Empty() && s.Empty() {
			continue // insertions at one place stand one behind the other
		}
		if e.Span.Start < s.End && s.Start < e.Span.End {
			return true
		}
	}
	return false
}

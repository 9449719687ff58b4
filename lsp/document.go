package lsp

import (
	"encoding/json"
	"path"
	"sync"
	"sync/atomic"

	"go.lsp.dev/protocol"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/rules"
	"example.org/tundish/lang"
)

// document is one version of an open text. It never changes; its analysis is
// made once, when somebody first asks.
type document struct {
	uri     string // as the client wrote it
	path    string // slash path; empty for an untitled document
	name    string // of the source
	version int32
	src     *lang.Source

	once sync.Once
	done atomic.Pointer[analysis] // set when the analysis is made
	// good is the last analysis of this document whose text could be read whole:
	// while a statement is half typed, hints and lenses come from it.
	good *analysis
}

// analysis is what the engine says of one version of a text.
type analysis struct {
	src  *lang.Source
	rep  *check.Report
	uses map[string]bool // paths of the other files it read
}

// analyze parses, resolves and judges the text.
func (d *document) analyze(s *snapshot) *analysis {
	d.once.Do(func() {
		a := &analysis{src: d.src, uses: map[string]bool{}}
		f := lang.Parse(d.src, s.server.cache)
		lang.Bind(f, lang.Language())
		p := plant.Resolve(f, func(name string) (*lang.File, error) {
			a.uses[name] = true
			return s.load(name)
		})
		a.rep = s.judge(d, p, a.uses)
		d.done.Store(a)
	})
	return d.done.Load()
}

// judge runs the rules on a plant with the settings that hold for a document.
func (s *snapshot) judge(d *document, p *plant.Plant, uses map[string]bool) *check.Report {
	set := check.ReadSettings(s.project(d, uses))
	p.Problems = append(p.Problems, set.Problems...)
	in := check.Input{Plant: p, Rules: rules.All(), Overrides: set.Overrides}
	if d.good != nil {
		in.Expected = len(d.good.rep.Findings)
	}
	return check.Run(in)
}

// shown is the analysis that hints and lenses show: that of this text, or while
// it cannot be read whole the last good one; stale tells which.
func (d *document) shown(s *snapshot) (a *analysis, stale bool) {
	a = d.analyze(s)
	if d.good != nil && a.rep.Plant.Damaged() {
		return d.good, true
	}
	return a, false
}

// again is the same text to be analyzed anew.
func (d *document) again() *document {
	return &document{uri: d.uri, path: d.path, name: d.name, version: d.version, src: d.src, good: d.good}
}

// reads reports whether the document's analysis read a file; one that was not
// analyzed yet will read what is there then.
func (d *document) reads(p string) bool {
	a := d.done.Load()
	return a != nil && a.uses[p]
}

// snapshot is the set of open documents at one moment.
type snapshot struct {
	server *Server
	docs   map[string]*document // by the client's URI
	byPath map[string]*document
	gen    int
}

func (s *snapshot) find(uri string) *document {
	if d := s.docs[uri]; d != nil {
		return d
	}
	if p := pathOf(uri); p != "" { // another spelling of the same file
		return s.byPath[p]
	}
	return nil
}

// load reads another file of the workspace: an open document first, then disk.
func (s *snapshot) load(name string) (*lang.File, error) {
	if d := s.byPath[name]; d != nil {
		f := lang.Parse(d.src, s.server.cache)
		lang.Bind(f, lang.Language())
		return f, nil
	}
	return s.server.disk.load(name)
}

// project finds the settings that hold for a document: the nearest project file
// upwards, not above a folder that the client opened. What was looked for counts
// as used, so that a file that appears later is heard of.
func (s *snapshot) project(d *document, uses map[string]bool) *lang.File {
	if d.path == "" || path.Base(d.path) == check.ProjectFile {
		return nil
	}
	for dir := path.Dir(d.path); ; dir = path.Dir(dir) {
		name := path.Join(dir, check.ProjectFile)
		uses[name] = true
		if f, err := s.load(name); err == nil {
			return f
		}
		if s.server.disk.isRoot(dir) || dir == path.Dir(dir) {
			return nil
		}
	}
}

// with gives the next snapshot with a document put in or taken out. Documents
// that read the changed file are analyzed anew.
func (s *snapshot) with(uri string, d *document) *snapshot {
	n := &snapshot{server: s.server, docs: make(map[string]*document, len(s.docs)+1), byPath: make(map[string]*document, len(s.docs)+1), gen: s.gen + 1}
	changed := pathOf(uri)
	for u, old := range s.docs {
		if u == uri {
			continue
		}
		if changed != "" && old.reads(changed) {
			old = old.again()
		}
		n.put(u, old)
	}
	if d != nil {
		n.put(uri, d)
	}
	return n
}

func (s *snapshot) put(uri string, d *document) {
	s.docs[uri] = d
	if d.path != "" {
		s.byPath[d.path] = d
	}
}

// change is one edit of a didChange, read leniently: some clients send a null
// range for the whole text, or a length of -1.
type change struct {
	Range *struct {
		Start protocol.Position `json:"start"`
		End   protocol.Position `json:"end"`
	} `json:"range"`
	Text string `json:"text"`
}

// apply makes ordered edits to a text.
func apply(text string, changes []change, e encoding) string {
	for _, c := range changes {
		if c.Range == nil {
			text = c.Text
			continue
		}
		src := lang.NewSource("", text)
		s := e.span(src, protocol.Range{Start: c.Range.Start, End: c.Range.End})
		text = text[:s.Start] + c.Text + text[s.End:]
	}
	return text
}

// docPosition is the part of the parameters that most requests share.
type docPosition struct {
	TextDocument struct {
		URI     string `json:"uri"`
		Version *int32 `json:"version"`
	} `json:"textDocument"`
	Position      protocol.Position `json:"position"`
	Range         protocol.Range    `json:"range"`
	WorkDoneToken json.RawMessage   `json:"workDoneToken"`
}

func decode[T any](params json.RawMessage) (T, error) {
	var v T
	if len(params) == 0 {
		return v, nil
	}
	return v, json.Unmarshal(params, &v)
}

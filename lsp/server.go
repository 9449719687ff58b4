package lsp

import (
	"context"
	"encoding/json"
	"errors"
	"io"
	"path"
	"strconv"
	"sync"
	"sync/atomic"
	"time"

	"go.lsp.dev/jsonrpc2"

	"example.org/tundish/check"
	"example.org/tundish/check/report/sheet"
	"example.org/tundish/lang"
)

// Options are what the command line gives the server.
type Options struct {
	Version string
	Log     io.Writer // trace of every message; nil: none
	// Figures draws what the live sheet shows of a plant; nil: no figures.
	Figures func(*check.Report) []sheet.Figure
}

// Server is one session with one client.
type Server struct {
	opts   Options
	front  *front
	cache  *lang.Cache
	disk   *disk
	client clientCaps
	enc    encoding
	config *configuration

	mu      sync.Mutex // guards snap, pulled and state
	snap    *snapshot
	pulled  map[string]bool // documents that the client pulls diagnostics of
	state   sessionState
	nextID  atomic.Int64
	waiting sync.Map // id -> func(result, error)
	// searches are those that the client may stop, by the token of their progress.
	searches sync.Map
	publish  chan struct{}
	sent     map[string]sentDiagnostics // by URI, of the publisher alone
	tokens   tokenMemory
	tracing  atomic.Int32 // how much the client wants to hear: traceOff and so on
	live     *live
	rules    rulePage
	exited   bool
}

type sessionState uint8

const (
	fresh sessionState = iota
	running
	stopping
)

// feature answers one request on a snapshot.
type feature func(s *Server, ctx context.Context, params json.RawMessage, at *snapshot) (any, error)

// features is the table of requests; each feature file puts its own in.
var features = map[string]feature{}

func on(method string, f feature) bool {
	features[method] = f
	return true
}

// documentCache bounds the statements kept from one edit to the next, in bytes: of
// a text of 5,000 lines they take about 5 MB, each letter typed another kB.
const documentCache = 24 << 20

// Run serves a session until the client leaves. The result is the exit code of
// the protocol: 0 after shutdown, 1 without.
func Run(ctx context.Context, in io.Reader, out io.Writer, opts Options) int {
	s := &Server{opts: opts, cache: lang.NewCacheSize(documentCache), pulled: map[string]bool{}, publish: make(chan struct{}, 1), sent: map[string]sentDiagnostics{}, config: newConfiguration()}
	s.disk = &disk{cache: s.cache, files: map[string]diskFile{}}
	s.live = &live{server: s}
	s.snap = &snapshot{server: s, docs: map[string]*document{}, byPath: map[string]*document{}}
	s.front = &front{
		stream: newStream(in, out, opts.Log), handle: s.handle, notify: s.notify, snapshot: s.current, answered: s.answered, ready: s.ready,
	}
	ctx, cancel := context.WithCancel(ctx)
	var wg sync.WaitGroup
	wg.Add(1)
	go func() { defer wg.Done(); s.publisher(ctx) }()
	s.front.run(ctx, func() bool { return s.exited })
	cancel()
	wg.Wait()
	s.live.close()
	s.live.wait()
	s.rules.stop()
	s.front.close()
	s.disk.release()
	if s.state == stopping {
		return 0
	}
	return 1
}

func (s *Server) current() *snapshot {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.snap
}

func (s *Server) ready(method string) *jsonrpc2.Error {
	switch {
	case s.state == fresh && method != "initialize":
		return jsonrpc2.NewError(jsonrpc2.ServerNotInitialized, "initialize comes first")
	case s.state != fresh && method == "initialize":
		return jsonrpc2.NewError(jsonrpc2.InvalidRequest, "initialize came already")
	case s.state == stopping && method != "shutdown":
		return jsonrpc2.NewError(jsonrpc2.InvalidRequest, "the server is shut down")
	}
	return nil
}

func (s *Server) handle(ctx context.Context, method string, params json.RawMessage, at *snapshot) (any, error) {
	f := features[method]
	if f == nil {
		return nil, jsonrpc2.NewError(jsonrpc2.MethodNotFound, "the server has no "+method)
	}
	defer s.traceRequest(method, params, time.Now())
	v, err := f(s, ctx, params, at)
	if wrong := (*json.UnmarshalTypeError)(nil); errors.As(err, &wrong) {
		err = jsonrpc2.NewError(jsonrpc2.InvalidParams, err.Error())
	}
	return v, err
}

// notify takes a notification in order. A bad one is passed over: there is
// nobody to tell.
func (s *Server) notify(method string, params json.RawMessage) {
	if method == "exit" {
		s.exited = true
		return
	}
	if s.state == fresh {
		return
	}
	switch method {
	case "initialized":
		s.initialized()
	case "$/setTrace":
		if p, err := decode[struct {
			Value string `json:"value"`
		}](params); err == nil {
			s.setTrace(p.Value)
		}
	case "textDocument/didOpen":
		s.didOpen(params)
	case "textDocument/didChange":
		s.didChange(params)
	case "textDocument/didSave":
		s.didSave(params)
	case "textDocument/didClose":
		s.didClose(params)
	case "window/workDoneProgress/cancel":
		s.cancelProgress(params)
	case "workspace/didChangeWatchedFiles", "workspace/didRenameFiles", "workspace/didDeleteFiles", "workspace/didCreateFiles":
		s.filesChanged()
	case "workspace/didChangeWorkspaceFolders":
		s.foldersChanged(params)
	case "workspace/didChangeConfiguration":
		s.configurationChanged(params)
	}
}

// replace puts a document in and wakes the publisher.
func (s *Server) replace(uri string, d *document) {
	s.mu.Lock()
	if d != nil {
		if old := s.snap.docs[uri]; old != nil {
			d.good = old.good
			if a := old.done.Load(); a != nil && !a.rep.Plant.Damaged() {
				d.good = a
			}
		}
	}
	before := s.snap
	s.snap = s.snap.with(uri, d)
	others := false
	for u, o := range s.snap.docs {
		others = others || u != uri && before.docs[u] != o
	}
	s.mu.Unlock()
	s.wake()
	if others { // a catalogue changed: what clients show of its users is old
		s.refresh()
	}
}

func (s *Server) wake() {
	select {
	case s.publish <- struct{}{}:
	default:
	}
}

func (s *Server) newDocument(uri, text string, version int32) *document {
	d := &document{uri: uri, path: pathOf(uri), version: version}
	d.name = d.path
	if d.name == "" {
		d.name = uri
	} else {
		s.disk.allow(path.Dir(d.path)) // a single file may use its neighbors
	}
	d.src = lang.NewSource(d.name, text)
	return d
}

func (s *Server) didOpen(params json.RawMessage) {
	p, err := decode[struct {
		TextDocument struct {
			URI     string `json:"uri"`
			Version int32  `json:"version"`
			Text    string `json:"text"`
		} `json:"textDocument"`
	}](params)
	if err != nil || p.TextDocument.URI == "" {
		return
	}
	if file := pathOf(p.TextDocument.URI); file != "" {
		s.disk.allowProject(path.Dir(file))
	}
	s.replace(p.TextDocument.URI, s.newDocument(p.TextDocument.URI, p.TextDocument.Text, p.TextDocument.Version))
}

func (s *Server) didChange(params json.RawMessage) {
	p, err := decode[struct {
		TextDocument struct {
			URI     string `json:"uri"`
			Version *int32 `json:"version"`
		} `json:"textDocument"`
		ContentChanges []change `json:"contentChanges"`
	}](params)
	if err != nil {
		return
	}
	old := s.current().find(p.TextDocument.URI)
	if old == nil {
		return
	}
	version := old.version + 1
	if p.TextDocument.Version != nil {
		version = *p.TextDocument.Version
	}
	s.replace(old.uri, s.newDocument(old.uri, apply(old.src.Text, p.ContentChanges, s.enc), version))
}

func (s *Server) didSave(params json.RawMessage) {
	p, err := decode[struct {
		TextDocument struct {
			URI string `json:"uri"`
		} `json:"textDocument"`
		Text *string `json:"text"`
	}](params)
	if err != nil {
		return
	}
	if old := s.current().find(p.TextDocument.URI); old != nil && p.Text != nil && *p.Text != old.src.Text {
		s.replace(old.uri, s.newDocument(old.uri, *p.Text, old.version))
	}
}

func (s *Server) didClose(params json.RawMessage) {
	p, err := decode[docPosition](params)
	if err != nil {
		return
	}
	d := s.current().find(p.TextDocument.URI)
	if d == nil {
		return
	}
	s.mu.Lock()
	delete(s.pulled, d.uri)
	s.mu.Unlock()
	s.tokens.forget(d.uri)
	s.replace(d.uri, nil)
}

// filesChanged drops every analysis: a file on disk may be another one now.
func (s *Server) filesChanged() {
	s.mu.Lock()
	n := &snapshot{server: s, docs: map[string]*document{}, byPath: map[string]*document{}, gen: s.snap.gen + 1}
	for u, d := range s.snap.docs {
		n.put(u, d.again())
	}
	s.snap = n
	s.mu.Unlock()
	s.wake()
	s.refresh()
}

func (s *Server) foldersChanged(params json.RawMessage) {
	p, err := decode[struct {
		Event struct {
			Added []struct {
				URI string `json:"uri"`
			} `json:"added"`
			Removed []struct {
				URI string `json:"uri"`
			} `json:"removed"`
		} `json:"event"`
	}](params)
	if err != nil {
		return
	}
	for _, f := range p.Event.Added {
		if dir := pathOf(f.URI); dir != "" {
			s.disk.open(dir)
		}
	}
	for _, f := range p.Event.Removed {
		s.disk.close(pathOf(f.URI))
	}
	s.filesChanged()
}

// call sends a request to the client; then runs on the reading goroutine when
// the answer comes and must not block.
func (s *Server) call(method string, params any, then func(result json.RawMessage, err *jsonrpc2.Error)) {
	id := s.nextID.Add(1)
	var raw json.RawMessage
	if params != nil {
		var err error
		if raw, err = encode(params); err != nil {
			return
		}
	}
	key := strconv.FormatInt(id, 10)
	if then == nil {
		then = func(json.RawMessage, *jsonrpc2.Error) {}
	}
	s.waiting.Store(key, then)
	s.front.post(outgoing{ID: json.RawMessage(key), Method: method, Params: raw})
}

func (s *Server) tell(method string, params any) {
	if raw, err := encode(params); err == nil {
		s.front.post(outgoing{Method: method, Params: raw})
	}
}

func (s *Server) answered(id string, result json.RawMessage, err *jsonrpc2.Error) {
	if then, ok := s.waiting.LoadAndDelete(id); ok {
		then.(func(json.RawMessage, *jsonrpc2.Error))(result, err)
	}
}

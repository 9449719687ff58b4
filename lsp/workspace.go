package lsp

import (
	"context"
	"encoding/json"
	"io/fs"
	"path"
	"path/filepath"
	"sort"
	"strconv"
	"strings"
	"time"

	"go.lsp.dev/jsonrpc2"

	"example.org/tundish/lang"
)

// maxWorkspaceFiles bounds how many files one question looks through; an archive
// is the linter's work.
const maxWorkspaceFiles = 5000

// eachFile shows every open document and every specification in the folders that
// the client opened, in order of path, one after the other: together they may be
// more than there is memory for. It tells the progress when the client asked for
// that, and stops when the request or the search is canceled; whole is false then,
// and when there are too many.
func (s *Server) eachFile(ctx context.Context, at *snapshot, title string, token json.RawMessage, show func(uri string, f *lang.File)) (whole bool) {
	uris := make([]string, 0, len(at.docs))
	for uri := range at.docs {
		uris = append(uris, uri)
	}
	sort.Strings(uris)
	for _, uri := range uris {
		show(uri, at.docs[uri].analyze(at).rep.Plant.File)
	}
	paths := s.disk.list(ctx)
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	bar := s.progress(title, token, len(paths), stop)
	defer bar.end()
	for i, p := range paths {
		if ctx.Err() != nil {
			break
		}
		bar.at(i)
		if at.byPath[p] != nil {
			continue // open: its text counts, not the one on disk
		}
		if f, err := s.disk.load(p); err == nil {
			show(uriOf(p), f)
		}
	}
	return ctx.Err() == nil && len(paths) < maxWorkspaceFiles
}

// list gives the slash paths of the specifications in the folders that the
// client opened. Hidden folders are left out, and links are not followed.
func (d *disk) list(ctx context.Context) []string {
	d.mu.Lock()
	opened := append([]string(nil), d.opened...)
	d.mu.Unlock()
	seen := map[string]bool{}
	var out []string
	for _, root := range opened {
		_ = filepath.WalkDir(filepath.FromSlash(root), func(name string, e fs.DirEntry, err error) error {
			switch {
			case ctx.Err() != nil || len(out) >= maxWorkspaceFiles:
				return fs.SkipAll
			case err != nil:
				return nil // what cannot be read is left out
			case e.IsDir():
				if base := e.Name(); len(base) > 1 && base[0] == '.' || base == "node_modules" {
					return fs.SkipDir
				}
			case e.Type().IsRegular() && strings.EqualFold(path.Ext(e.Name()), ".plant"):
				if p := filepath.ToSlash(name); !seen[p] {
					seen[p] = true
					out = append(out, p)
				}
			}
			return nil
		})
	}
	return out
}

// manyFiles is from how many files on a search is told to a client that did not
// ask for it.
const manyFiles = 200

// progress tells a client how far a long answer is.
type progress struct {
	s     *Server
	token json.RawMessage
	n     int
	last  int
	stop  context.CancelFunc
}

// progress begins to tell. A client that gave no token is asked to take one when
// there is much to do; it may stop the search then, which gives what was found.
func (s *Server) progress(title string, token json.RawMessage, n int, stop context.CancelFunc) *progress {
	p := &progress{s: s, token: token, n: n, stop: stop}
	begin := object{"kind": "begin", "title": title, "percentage": 0}
	if len(token) == 0 && s.client.progress && n >= manyFiles {
		p.token, _ = json.Marshal("tundish-" + strconv.FormatInt(s.nextID.Add(1), 10))
		created := make(chan bool, 1)
		s.call("window/workDoneProgress/create", object{"token": p.token}, func(_ json.RawMessage, err *jsonrpc2.Error) { created <- err == nil })
		select {
		case ok := <-created:
			if !ok {
				p.token = nil
			}
		case <-time.After(200 * time.Millisecond): // it does not answer: the search does not wait
			p.token = nil
		}
		if p.token != nil {
			begin["cancellable"] = true
			s.searches.Store(string(p.token), p.stop)
		}
	}
	p.tell(begin)
	return p
}

// cancelProgress stops a search that the user does not wait for any more.
func (s *Server) cancelProgress(params json.RawMessage) {
	p, err := decode[struct {
		Token json.RawMessage `json:"token"`
	}](params)
	if err != nil {
		return
	}
	if stop, ok := s.searches.Load(string(p.Token)); ok {
		stop.(context.CancelFunc)()
	}
}

// at tells each further tenth.
func (p *progress) at(i int) {
	if percent := 100 * i / max(p.n, 1); percent >= p.last+10 {
		p.last = percent
		p.tell(object{"kind": "report", "percentage": percent})
	}
}

func (p *progress) end() {
	p.tell(object{"kind": "end"})
	p.s.searches.Delete(string(p.token))
}

func (p *progress) tell(value object) {
	if len(p.token) > 0 && string(p.token) != "null" {
		p.s.tell("$/progress", object{"token": p.token, "value": value})
	}
}

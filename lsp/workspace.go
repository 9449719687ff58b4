package lsp

import (
	"context"
	"encoding/json"
	"io/fs"
	"path"
	"path/filepath"
	"sort"
	"strings"

	"example.org/tundish/lang"
)

// maxWorkspaceFiles bounds how many files one question looks through; an archive
// is the linter's work.
const maxWorkspaceFiles = 5000

// workspaceFile is one specification, open or on disk.
type workspaceFile struct {
	uri  string
	file *lang.File
}

// workspaceFiles lists the open documents and the specifications in the folders
// that the client opened, in order of path. It tells the progress when the
// client asked for that, and stops when the request is canceled.
func (s *Server) workspaceFiles(ctx context.Context, at *snapshot, title string, token json.RawMessage) []workspaceFile {
	var out []workspaceFile
	uris := make([]string, 0, len(at.docs))
	for uri := range at.docs {
		uris = append(uris, uri)
	}
	sort.Strings(uris)
	for _, uri := range uris {
		out = append(out, workspaceFile{uri, at.docs[uri].analyze(at).rep.Plant.File})
	}
	paths := s.disk.list(ctx)
	bar := s.progress(title, token, len(paths))
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
			out = append(out, workspaceFile{uriOf(p), f})
		}
	}
	return out
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

// progress tells a client how far a long answer is.
type progress struct {
	s     *Server
	token json.RawMessage
	n     int
	last  int
}

// progress begins to tell; without a token from the client nothing is told.
func (s *Server) progress(title string, token json.RawMessage, n int) *progress {
	p := &progress{s: s, token: token, n: n}
	p.tell(object{"kind": "begin", "title": title, "percentage": 0})
	return p
}

// at tells each further tenth.
func (p *progress) at(i int) {
	if percent := 100 * i / max(p.n, 1); percent >= p.last+10 {
		p.last = percent
		p.tell(object{"kind": "report", "percentage": percent})
	}
}

func (p *progress) end() { p.tell(object{"kind": "end"}) }

func (p *progress) tell(value object) {
	if len(p.token) > 0 && string(p.token) != "null" {
		p.s.tell("$/progress", object{"token": p.token, "value": value})
	}
}

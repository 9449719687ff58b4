package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strings"
	"sync"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/rules"
	"example.org/tundish/lang"
)

// workspace reads specifications from disk and keeps parsed catalogues and
// statements for the length of one run.
type workspace struct {
	root  string   // clean; names of sources are relative to the working directory, not to this
	fs    *os.Root // refuses every path that leads outside, links included; nil: opened for each read
	cache *lang.Cache
	files shelf
}

// shelf keeps files that others use. It is bounded, because an archive of records
// uses every plant once: it holds two generations, and what is asked for again
// moves to the young one.
type shelf struct {
	mu         sync.Mutex
	young, old map[string]*entry
}

// shelfSize is how many files a generation of a shelf holds.
const shelfSize = 32

type entry struct {
	once sync.Once
	file *lang.File
	err  error
}

// entry finds the place of a file; who finds it empty fills it.
func (s *shelf) entry(name string) *entry {
	s.mu.Lock()
	defer s.mu.Unlock()
	e := s.young[name]
	if e != nil {
		return e
	}
	if e = s.old[name]; e == nil {
		e = &entry{}
	}
	if s.young == nil || len(s.young) >= shelfSize {
		s.old, s.young = s.young, make(map[string]*entry, shelfSize)
	}
	s.young[name] = e
	return e
}

// openWorkspace opens the folder in which "use" may move: the folder of the
// nearest project.plant upwards from dir, else the working directory if dir is
// inside it, else dir.
func openWorkspace(dir string) (*workspace, error) {
	return openWorkspaceAt(workspaceRoot(dir), lang.NewCache())
}

// openWorkspaceAt opens a root that is known, with a cache that may be shared.
func openWorkspaceAt(root string, cache *lang.Cache) (*workspace, error) {
	r, err := os.OpenRoot(root)
	if err != nil {
		return nil, fmt.Errorf("opening the workspace %s: %w", root, err)
	}
	return &workspace{root: root, fs: r, cache: cache}, nil
}

func (w *workspace) close() { w.fs.Close() }

func workspaceRoot(dir string) string {
	abs, err := filepath.Abs(dir)
	if err != nil {
		return dir
	}
	for d := abs; ; {
		if _, err := os.Stat(filepath.Join(d, projectFile)); err == nil {
			return d
		}
		up := filepath.Dir(d)
		if up == d {
			break
		}
		d = up
	}
	if wd, err := os.Getwd(); err == nil {
		if rel, err := filepath.Rel(wd, abs); err == nil && rel != ".." && !strings.HasPrefix(rel, ".."+string(filepath.Separator)) {
			return wd
		}
	}
	return abs
}

// projectFile holds the settings of a project, found upwards from a spec.
const projectFile = check.ProjectFile

// load is the plant.Loader of the workspace: name is a clean slash path as
// sources are named, relative to the working directory or absolute.
func (w *workspace) load(name string) (*lang.File, error) {
	e := w.files.entry(name)
	e.once.Do(func() {
		text, err := w.read(name)
		if err != nil {
			e.err = err
			return
		}
		e.file = w.parse(name, text)
	})
	return e.file, e.err
}

// parse makes a bound file of a text.
func (w *workspace) parse(name, text string) *lang.File {
	f := lang.Parse(lang.NewSource(name, text), w.cache)
	lang.Bind(f, lang.Language())
	return f
}

// read reads a file inside the workspace root.
func (w *workspace) read(name string) (string, error) {
	abs, err := filepath.Abs(filepath.FromSlash(name))
	if err != nil {
		return "", err
	}
	rel, err := filepath.Rel(w.root, abs)
	if err != nil || rel == ".." || strings.HasPrefix(rel, ".."+string(filepath.Separator)) {
		return "", errors.New("it lies outside the workspace " + w.root)
	}
	f, err := w.open(rel)
	if err != nil {
		if errors.Is(err, fs.ErrNotExist) {
			return "", errors.New("no such file")
		}
		var pe *fs.PathError
		if errors.As(err, &pe) {
			return "", pe.Err
		}
		return "", err
	}
	defer f.Close()
	return readLimited(f)
}

func (w *workspace) open(rel string) (*os.File, error) {
	if w.fs == nil {
		return os.OpenInRoot(w.root, rel)
	}
	return w.fs.Open(rel)
}

// checkText judges one text under the name given.
func (w *workspace) checkText(name, text string, today lang.Date, set *check.Settings) *check.Report {
	f := w.parse(path.Clean(filepath.ToSlash(name)), text)
	p := plant.Resolve(f, w.load)
	p.Problems = append(p.Problems, set.Problems...)
	return check.Run(check.Input{Plant: p, Rules: rules.All(), Today: today, Overrides: set.Overrides})
}

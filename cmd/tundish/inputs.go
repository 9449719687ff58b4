package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"os"
	"path"
	"path/filepath"
	"sort"
	"strconv"
	"strings"
	"sync"

	"github.com/bmatcuk/doublestar/v4"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// job is one specification to judge, wherever it lies.
type job struct {
	name  string // as printed, and as sources are named
	read  func() (string, error)
	space func() (*lintSpace, error)
	// problems are those of an archive as a whole; such a job has no text.
	problems []lang.Problem
	gate     string // of the project, when it has been judged
}

// lintSpace is where a specification's "use" may move, with the settings that
// hold there.
type lintSpace struct {
	parse func(name, text string) *lang.File
	load  plant.Loader
	set   *check.Settings
}

// inputs gathers what a run judges and keeps open what that is read from.
type inputs struct {
	s        std
	jobs     []*job
	cache    *lang.Cache
	mu       sync.Mutex
	spaces   map[string]*lintSpace // by root
	byDir    map[string]*lintSpace
	folders  []string // that the user named: their files may use each other
	opened   []*workspace
	archives []*archive
}

func newInputs(s std) *inputs {
	return &inputs{s: s, cache: lang.NewCache(), spaces: map[string]*lintSpace{}, byDir: map[string]*lintSpace{}}
}

func (in *inputs) close() {
	for _, w := range in.opened {
		w.close()
	}
	for _, a := range in.archives {
		a.close()
	}
}

// add takes paths: files, folders, patterns, archives, "-" for a text on
// standard input, and the lines of a list. Jobs are then in order of path.
func (in *inputs) add(paths []string, list string) error {
	if list != "" {
		more, err := readList(in.s, list)
		if err != nil {
			return err
		}
		paths = append(paths, more...)
	}
	var plain []string
	for _, p := range paths {
		switch {
		case p == "-":
			in.jobs = append(in.jobs, in.standardInput())
		case exists(p) && isArchive(p):
			if err := in.archive(p); err != nil {
				return err
			}
		case exists(p) || !strings.ContainsAny(p, "*?[{"):
			plain = append(plain, p)
		default:
			found, err := doublestar.FilepathGlob(p, doublestar.WithFilesOnly())
			if err != nil {
				return fmt.Errorf("reading the pattern %s: %w", p, err)
			}
			if len(found) == 0 {
				return fmt.Errorf("nothing fits the pattern %s", p)
			}
			plain = append(plain, found...)
		}
	}
	files, err := specs(plain)
	if err != nil {
		return err
	}
	for _, p := range plain {
		if st, err := os.Stat(p); err == nil && st.IsDir() {
			in.folders = append(in.folders, filepath.Clean(p))
		}
	}
	for _, f := range files {
		if isArchive(f) {
			if err := in.archive(f); err != nil {
				return err
			}
			continue
		}
		in.jobs = append(in.jobs, in.file(f))
	}
	sort.SliceStable(in.jobs, func(i, j int) bool { return in.jobs[i].name < in.jobs[j].name })
	return nil
}

func exists(p string) bool {
	_, err := os.Stat(p)
	return err == nil
}

// readList reads paths one on a line; a line that holds a NUL byte is a list as
// find -print0 writes it.
func readList(s std, name string) ([]string, error) {
	r := s.in
	if name != "-" {
		f, err := os.Open(name)
		if err != nil {
			return nil, fmt.Errorf("opening the list %s: %w", name, cause(err))
		}
		defer f.Close()
		r = f
	}
	var out []string
	sc := bufio.NewScanner(r)
	sc.Buffer(make([]byte, 0, 64<<10), 16<<20)
	for sc.Scan() {
		for _, p := range strings.Split(sc.Text(), "\x00") {
			if p = strings.TrimRight(p, "\r"); p != "" {
				out = append(out, p)
			}
		}
	}
	if err := sc.Err(); err != nil {
		return nil, fmt.Errorf("reading the list %s: %w", name, err)
	}
	return out, nil
}

func (in *inputs) standardInput() *job {
	return &job{
		name:  stdinName,
		read:  func() (string, error) { return readLimited(in.s.in) },
		space: func() (*lintSpace, error) { return in.folder(".") },
	}
}

func (in *inputs) file(p string) *job {
	return &job{
		name:  path.Clean(filepath.ToSlash(p)),
		read:  func() (string, error) { return readFile(p) },
		space: func() (*lintSpace, error) { return in.folder(filepath.Dir(p)) },
	}
}

// readFile reads a text up to the limit of the language plus one byte.
func readFile(p string) (string, error) {
	f, err := os.Open(p)
	if err != nil {
		return "", fmt.Errorf("opening %s: %w", p, cause(err))
	}
	defer f.Close()
	st, err := f.Stat()
	if err != nil {
		return "", fmt.Errorf("looking at %s: %w", p, cause(err))
	}
	if st.IsDir() {
		return "", fmt.Errorf("reading %s: it is a folder", p)
	}
	var b strings.Builder
	b.Grow(int(min(st.Size(), lang.MaxFileSize)) + 1)
	if _, err := io.Copy(&b, io.LimitReader(f, lang.MaxFileSize+1)); err != nil {
		return "", fmt.Errorf("reading %s: %w", p, cause(err))
	}
	return b.String(), nil
}

// folder gives the space of the files of a folder, opened once for each root.
func (in *inputs) folder(dir string) (*lintSpace, error) {
	in.mu.Lock()
	defer in.mu.Unlock()
	if sp := in.byDir[dir]; sp != nil {
		return sp, nil
	}
	root := workspaceRoot(dir)
	if abs, err := filepath.Abs(dir); err == nil && root == abs {
		root = in.named(abs)
	}
	sp := in.spaces[root]
	if sp == nil {
		w, err := openWorkspaceAt(root, in.cache)
		if err != nil {
			return nil, err
		}
		in.opened = append(in.opened, w)
		sp = &lintSpace{parse: w.parse, load: w.load, set: w.loadSettings()}
		in.spaces[root] = sp
	}
	in.byDir[dir] = sp
	return sp, nil
}

// named is the outermost folder that the user named and that holds a folder; the
// folder itself where there is none.
func (in *inputs) named(dir string) string {
	best := dir
	for _, f := range in.folders {
		abs, err := filepath.Abs(f)
		if err != nil || len(abs) >= len(best) {
			continue
		}
		if rel, err := filepath.Rel(abs, dir); err == nil && rel != ".." && !strings.HasPrefix(rel, ".."+string(filepath.Separator)) {
			best = abs
		}
	}
	return best
}

// archive takes the specifications of an archive, and its own problems.
func (in *inputs) archive(p string) error {
	a, err := openArchive(p)
	if err != nil {
		return err
	}
	in.archives = append(in.archives, a)
	if len(a.problems) > 0 {
		in.jobs = append(in.jobs, &job{name: a.name, problems: a.problems})
	}
	sp := newArchiveSpaces(a, in.cache)
	for _, m := range a.names {
		in.jobs = append(in.jobs, &job{
			name:  a.name + "/" + m,
			read:  func() (string, error) { return a.read(m) },
			space: func() (*lintSpace, error) { return sp.of(path.Dir(m)), nil },
		})
	}
	return nil
}

// archiveSpaces gives each folder of an archive its settings; files are loaded
// from the archive and from nowhere else.
type archiveSpaces struct {
	a     *archive
	cache *lang.Cache
	mu    sync.Mutex
	files map[string]*entry
	dirs  map[string]*lintSpace
}

func newArchiveSpaces(a *archive, cache *lang.Cache) *archiveSpaces {
	return &archiveSpaces{a: a, cache: cache, files: map[string]*entry{}, dirs: map[string]*lintSpace{}}
}

func (s *archiveSpaces) parse(name, text string) *lang.File {
	f := lang.Parse(lang.NewSource(name, text), s.cache)
	lang.Bind(f, lang.Language())
	return f
}

func (s *archiveSpaces) load(name string) (*lang.File, error) {
	m, inside := strings.CutPrefix(name, s.a.name+"/")
	if !inside {
		return nil, errors.New("it lies outside the archive")
	}
	s.mu.Lock()
	e := s.files[m]
	if e == nil {
		e = &entry{}
		s.files[m] = e
	}
	s.mu.Unlock()
	e.once.Do(func() {
		var text string
		if text, e.err = s.a.read(m); e.err == nil {
			e.file = s.parse(name, text)
		}
	})
	return e.file, e.err
}

func (s *archiveSpaces) of(dir string) *lintSpace {
	s.mu.Lock()
	sp := s.dirs[dir]
	s.mu.Unlock()
	if sp != nil {
		return sp
	}
	sp = &lintSpace{parse: s.parse, load: s.load, set: check.ReadSettings(nil)}
	for d := dir; ; d = path.Dir(d) {
		m := path.Join(d, projectFile)
		if _, ok := s.a.members[m]; ok {
			if f, err := s.load(s.a.name + "/" + m); err == nil {
				sp.set = check.ReadSettings(f)
			}
			break
		}
		if d == "." {
			break
		}
	}
	s.mu.Lock()
	s.dirs[dir] = sp
	s.mu.Unlock()
	return sp
}

// parseShard reads "2/4".
func parseShard(text string) (k, n int, ok bool) {
	a, b, found := strings.Cut(text, "/")
	k, err1 := strconv.Atoi(a)
	n, err2 := strconv.Atoi(b)
	return k, n, found && err1 == nil && err2 == nil && n >= 1 && k >= 1 && k <= n
}

// shard keeps the k-th of n parts of nearly equal length, neighbors together, so
// that the parts one after the other are the whole.
func (in *inputs) shard(k, n int) {
	total := len(in.jobs)
	in.jobs = in.jobs[(k-1)*total/n : k*total/n]
}

package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"os"
	"path"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"syscall"

	"github.com/bmatcuk/doublestar/v4"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

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
	jobs     jobList
	cache    *lang.Cache // nil: one file repeats too little of itself
	mu       sync.Mutex
	spaces   map[string]*lintSpace // by root
	byDir    map[string]*lintSpace
	folders  []string // that the user named: their files may use each other
	archives []*archive
}

// runCache is the size of the cache of statements that the files of a run share:
// those that repeat from file to file are kept, the rest goes.
const runCache = 6 << 20

// maxSpaces bounds what is kept of folders and projects: an archive may have as
// many of them as files.
const maxSpaces = 256

func newInputs(s std) *inputs {
	return &inputs{s: s, spaces: map[string]*lintSpace{}, byDir: map[string]*lintSpace{}}
}

func (in *inputs) close() {
	for _, a := range in.archives {
		a.close()
	}
}

// add takes paths: files, folders, patterns, archives, "-" for a text on
// standard input, and the lines of a list. Jobs are then in order of path. What
// cannot be opened is told in its place in the order and stops nothing else; a
// pattern that nothing fits is a slip, and an error.
func (in *inputs) add(paths []string, list string) error {
	if list != "" {
		more, err := readList(in.s, list)
		if err != nil {
			return err
		}
		paths = append(paths, more...)
	}
	disk := &diskSource{in: in}
	a := adder{in: in, disk: disk, number: in.jobs.source(disk)}
	for _, p := range paths {
		switch {
		case p == "-":
			in.jobs.add(stdinName, in.jobs.source(stdinSource{in}))
		case exists(p) || !strings.ContainsAny(p, "*?[{"):
			a.path(p)
		default:
			found, err := doublestar.FilepathGlob(p, doublestar.WithFilesOnly())
			if err != nil {
				return fmt.Errorf("reading the pattern %s: %w", p, err)
			}
			if len(found) == 0 {
				return fmt.Errorf("nothing fits the pattern %s", p)
			}
			for _, f := range found {
				a.path(f)
			}
		}
	}
	in.jobs.order()
	if in.jobs.len() > 1 {
		in.cache = lang.NewRepeatCache(runCache)
	}
	return nil
}

// adder takes paths of a disk in.
type adder struct {
	in     *inputs
	disk   *diskSource
	number uint32
}

func (a adder) path(p string) {
	st, err := os.Stat(p)
	switch {
	case err != nil:
		a.failed(p, fmt.Errorf("looking at %s: %w", p, cause(err)))
	case st.IsDir():
		a.in.folders = append(a.in.folders, filepath.Clean(p))
		walk(p, a.file, a.failed)
	case isArchive(p):
		if err := a.in.archive(p); err != nil {
			a.failed(p, err)
		}
	default:
		a.file(p)
	}
}

func (a adder) file(p string) {
	name := path.Clean(filepath.ToSlash(p))
	if strings.Contains(p, "..") && filepath.ToSlash(p) != name { // a link before ".." leads elsewhere
		if a.disk.odd == nil {
			a.disk.odd = map[string]string{}
		}
		a.disk.odd[name] = p
	}
	a.in.jobs.add(name, a.number)
}

func (a adder) failed(p string, err error) {
	a.in.jobs.add(path.Clean(filepath.ToSlash(p)), a.in.jobs.source(errorSource{err}))
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

// stdinSource is the text on standard input.
type stdinSource struct{ in *inputs }

func (s stdinSource) read(string) (string, error)      { return readLimited(s.in.s.in) }
func (s stdinSource) space(string) (*lintSpace, error) { return s.in.folder(".") }

// diskSource is the files of a disk.
type diskSource struct {
	in  *inputs
	odd map[string]string // paths that are not the same as their clean names
}

func (s *diskSource) path(name string) string {
	if p, ok := s.odd[name]; ok {
		return p
	}
	return filepath.FromSlash(name)
}

func (s *diskSource) read(name string) (string, error) { return readFile(s.path(name)) }

func (s *diskSource) space(name string) (*lintSpace, error) {
	return s.in.folder(filepath.Dir(s.path(name)))
}

// buffers are what files are read into, each used again for the next file.
var buffers = sync.Pool{New: func() any { return new([64 << 10]byte) }}

// readFile is readLimited for a file of the disk.
func readFile(p string) (string, error) {
	f, err := os.Open(p)
	if err != nil {
		return "", fmt.Errorf("opening %s: %w", p, cause(err))
	}
	defer f.Close()
	text, err := readLimited(f)
	switch {
	case errors.Is(err, syscall.EISDIR):
		return "", fmt.Errorf("reading %s: it is a folder", p)
	case err != nil:
		return "", fmt.Errorf("reading %s: %w", p, cause(err))
	}
	return text, nil
}

// readLimited reads a text up to the limit of the language plus one byte, so
// that an oversized file is reported and not read whole.
func readLimited(r io.Reader) (string, error) {
	buf := buffers.Get().(*[64 << 10]byte)
	defer buffers.Put(buf)
	n := 0
	for n < len(buf) {
		k, err := r.Read(buf[n:])
		n += k
		switch {
		case errors.Is(err, io.EOF):
			return string(buf[:n]), nil
		case err != nil:
			return "", err
		}
	}
	var b strings.Builder // larger than most
	b.Write(buf[:])
	if _, err := io.Copy(&b, io.LimitReader(r, int64(lang.MaxFileSize+1-n))); err != nil {
		return "", err
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
		w := &workspace{root: root, cache: in.cache}
		if len(in.spaces) >= maxSpaces {
			clear(in.spaces)
			clear(in.byDir)
		}
		sp = &lintSpace{parse: w.parse, load: w.load, set: w.loadSettings()}
		in.spaces[root] = sp
	}
	if len(in.byDir) >= maxSpaces {
		clear(in.byDir)
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
		in.jobs.add(a.name, in.jobs.source(problemSource{problems: a.problems}))
	}
	number := in.jobs.source(&archiveSource{a: a, in: in, dirs: map[string]*lintSpace{}})
	for _, m := range a.members {
		in.jobs.add(a.name+"/"+string(a.nameOf(m)), number)
	}
	return nil
}

// archiveSource is the members of an archive. It gives each folder of the archive
// its settings; files are loaded from the archive and from nowhere else.
type archiveSource struct {
	a     *archive
	in    *inputs
	files shelf
	mu    sync.Mutex
	dirs  map[string]*lintSpace
}

func (s *archiveSource) member(name string) (string, bool) {
	return strings.CutPrefix(name, s.a.name+"/")
}

func (s *archiveSource) read(name string) (string, error) {
	m, _ := s.member(name)
	text, err := s.a.read(m)
	if err != nil {
		return "", fmt.Errorf("reading %s: %w", name, err)
	}
	return text, nil
}

func (s *archiveSource) space(name string) (*lintSpace, error) {
	m, _ := s.member(name)
	return s.of(path.Dir(m)), nil
}

func (s *archiveSource) parse(name, text string) *lang.File {
	f := lang.Parse(lang.NewSource(name, text), s.in.cache)
	lang.Bind(f, lang.Language())
	return f
}

func (s *archiveSource) load(name string) (*lang.File, error) {
	m, inside := s.member(name)
	if !inside {
		return nil, errors.New("it lies outside the archive")
	}
	e := s.files.entry(m)
	e.once.Do(func() {
		var text string
		if text, e.err = s.a.read(m); e.err == nil {
			e.file = s.parse(name, text)
		}
	})
	return e.file, e.err
}

func (s *archiveSource) of(dir string) *lintSpace {
	s.mu.Lock()
	sp := s.dirs[dir]
	s.mu.Unlock()
	if sp != nil {
		return sp
	}
	sp = &lintSpace{parse: s.parse, load: s.load, set: check.ReadSettings(nil)}
	for d := dir; ; d = path.Dir(d) {
		m := path.Join(d, projectFile)
		if s.a.has(m) {
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
	defer s.mu.Unlock()
	if len(s.dirs) >= maxSpaces {
		clear(s.dirs)
	}
	s.dirs[dir] = sp
	return sp
}

// parseShard reads "2/4".
func parseShard(text string) (k, n int, ok bool) {
	a, b, found := strings.Cut(text, "/")
	k, err1 := strconv.Atoi(a)
	n, err2 := strconv.Atoi(b)
	return k, n, found && err1 == nil && err2 == nil && n >= 1 && k >= 1 && k <= n
}

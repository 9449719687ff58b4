package lsp

import (
	"errors"
	"io"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"time"

	"example.org/tundish/check"
	"example.org/tundish/lang"
)

// disk reads files of the workspace folders, and no others, and keeps what it
// parsed until the file changes.
type disk struct {
	mu      sync.Mutex
	roots   []string
	opened  []string // of the roots, those that the client opened as folders
	cache   *lang.Cache
	files   map[string]diskFile
	size    int64 // bytes of the texts of files
	handles map[string]handle
}

// handle is a folder kept open, and what it was when it was opened.
type handle struct {
	root *os.Root
	info os.FileInfo
}

type diskFile struct {
	mod  time.Time
	size int64
	file *lang.File
}

// allow adds a folder in which files may be read.
func (d *disk) allow(root string) {
	d.mu.Lock()
	defer d.mu.Unlock()
	for _, r := range d.roots {
		if r == root {
			return
		}
	}
	d.roots = append(d.roots, root)
}

// open adds a folder that the client opened: its files are looked through for
// names, which those beside a single open file are not.
func (d *disk) open(root string) {
	d.allow(root)
	d.mu.Lock()
	defer d.mu.Unlock()
	if !slices.Contains(d.opened, root) {
		d.opened = append(d.opened, root)
	}
}

// close forgets a folder that the client closed. What stands open in it goes on
// being read.
func (d *disk) close(root string) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.opened = slices.DeleteFunc(d.opened, func(r string) bool { return r == root })
}

func (d *disk) folders() []string {
	d.mu.Lock()
	defer d.mu.Unlock()
	return append([]string(nil), d.roots...)
}

// allowProject adds the folder of the nearest project file upwards: it is the
// workspace of the linter too.
func (d *disk) allowProject(dir string) {
	for ; dir != path.Dir(dir); dir = path.Dir(dir) {
		if _, err := os.Stat(filepath.FromSlash(path.Join(dir, check.ProjectFile))); err == nil {
			d.allow(dir)
			return
		}
	}
}

// isRoot tells a folder that no other allowed folder holds: nothing is looked
// for above it.
func (d *disk) isRoot(dir string) bool {
	d.mu.Lock()
	defer d.mu.Unlock()
	for _, r := range d.roots {
		if r != dir && strings.HasPrefix(dir, strings.TrimSuffix(r, "/")+"/") {
			return false
		}
	}
	return true
}

// load reads and binds a file by its slash path.
func (d *disk) load(name string) (*lang.File, error) {
	native := filepath.FromSlash(name)
	for _, root := range d.folders() {
		rel, err := filepath.Rel(root, native)
		if err != nil || rel == ".." || strings.HasPrefix(rel, ".."+string(filepath.Separator)) {
			continue
		}
		return d.read(root, rel, name)
	}
	return nil, errors.New("it lies outside the workspace")
}

// handle opens a folder once; every analysis looks into it. A folder that was
// put in the place of the opened one is opened anew.
func (d *disk) handle(root string) (*os.Root, error) {
	now, err := os.Stat(filepath.FromSlash(root))
	if err != nil {
		return nil, err
	}
	d.mu.Lock()
	defer d.mu.Unlock()
	if h, ok := d.handles[root]; ok {
		if os.SameFile(h.info, now) {
			return h.root, nil
		}
		h.root.Close()
		delete(d.handles, root)
	}
	r, err := os.OpenRoot(filepath.FromSlash(root))
	if err != nil {
		return nil, err
	}
	if d.handles == nil {
		d.handles = map[string]handle{}
	}
	d.handles[root] = handle{r, now}
	return r, nil
}

// release closes the folders at the end of the session.
func (d *disk) release() {
	d.mu.Lock()
	defer d.mu.Unlock()
	for _, h := range d.handles {
		h.root.Close()
	}
	d.handles = nil
}

func (d *disk) read(root, rel, name string) (*lang.File, error) {
	r, err := d.handle(root)
	if err != nil {
		return nil, errors.New("its folder cannot be opened")
	}
	st, err := r.Stat(rel)
	if err != nil {
		return nil, errors.New("no such file in the workspace")
	}
	d.mu.Lock()
	have, ok := d.files[name]
	d.mu.Unlock()
	if ok && have.mod.Equal(st.ModTime()) && have.size == st.Size() {
		return have.file, nil
	}
	f, err := r.Open(rel)
	if err != nil {
		return nil, errors.New("no such file in the workspace")
	}
	defer f.Close()
	if st, err = f.Stat(); err != nil || st.IsDir() {
		return nil, errors.New("it is not a file")
	}
	b, err := io.ReadAll(io.LimitReader(f, lang.MaxFileSize+1))
	if err != nil {
		return nil, errors.New("it cannot be read")
	}
	file := lang.Parse(lang.NewSource(name, string(b)), d.cache)
	lang.Bind(file, lang.Language())
	d.keep(name, diskFile{st.ModTime(), st.Size(), file})
	return file, nil
}

// maxKept bounds the bytes of the texts that are kept; what was made of a text is
// some four times as large.
const maxKept = 8 << 20

// keep keeps a file until it changes, or until others need the room.
func (d *disk) keep(name string, f diskFile) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.size += f.size - d.files[name].size
	d.files[name] = f
	for other, o := range d.files {
		if d.size <= maxKept {
			return
		}
		if other != name {
			delete(d.files, other)
			d.size -= o.size
		}
	}
}

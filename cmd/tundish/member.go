package main

import (
	"archive/tar"
	"archive/zip"
	"compress/gzip"
	"errors"
	"fmt"
	"io"
	"os"
	"path"
	"path/filepath"
	"sort"
	"strings"

	"example.org/tundish/lang"
)

// Limits of what an archive may unpack to. Specifications are a few kB each, so
// an honest archive stays far below.
const (
	maxMembers   = 1 << 20
	maxUnpacked  = 4 << 30 // bytes of all members together
	maxExpansion = 200     // unpacked over packed bytes, beyond the first MiB
)

// archive is a packed folder of specifications, read without unpacking it to
// disk. Its members are named like files in a folder of the archive's name.
type archive struct {
	name     string // as the user gave it
	members  map[string]member
	names    []string // specifications, by path
	problems []lang.Problem
	close    func() error
}

// member is one file of an archive: where its text is to be had.
type member struct {
	open func() (io.ReadCloser, error)
}

// isArchive tells an archive by its name.
func isArchive(name string) bool {
	n := strings.ToLower(name)
	return strings.HasSuffix(n, ".zip") || strings.HasSuffix(n, ".tar") || strings.HasSuffix(n, ".tar.gz") || strings.HasSuffix(n, ".tgz")
}

// openArchive lists the members of an archive. What is wrong with the archive is
// a problem of it; what could be read stands.
func openArchive(name string) (*archive, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, fmt.Errorf("opening %s: %w", name, cause(err))
	}
	a := &archive{name: filepath.ToSlash(name), members: map[string]member{}, close: f.Close}
	switch n := strings.ToLower(name); {
	case strings.HasSuffix(n, ".zip"):
		err = a.zip(f)
	case strings.HasSuffix(n, ".tar"):
		err = a.tar(f, f)
	default:
		err = a.tarGz(f)
	}
	if err != nil {
		f.Close()
		return nil, fmt.Errorf("reading %s: %w", name, err)
	}
	sort.Strings(a.names)
	return a, nil
}

// add takes a member in, unless its name leads out of the archive.
func (a *archive) add(name string, regular bool, m member) {
	clean := path.Clean(strings.ReplaceAll(name, `\`, "/"))
	if !regular || path.IsAbs(clean) || clean == ".." || strings.HasPrefix(clean, "../") || len(clean) > 1 && clean[1] == ':' {
		a.problem("member-outside", "The member "+printable(name)+" is a link or leads out of the archive; it was not read.")
		return
	}
	if !strings.HasSuffix(clean, ".plant") || hidden(clean) {
		return
	}
	if _, twice := a.members[clean]; !twice {
		a.names = append(a.names, clean)
	}
	a.members[clean] = m // of two members of a name the later counts, as when unpacking
}

func hidden(name string) bool {
	for _, part := range strings.Split(name, "/") {
		if strings.HasPrefix(part, ".") {
			return true
		}
	}
	return false
}

func printable(name string) string {
	if len(name) > 80 {
		name = name[:80] + "..."
	}
	return fmt.Sprintf("%q", name)
}

func (a *archive) problem(rule, message string) {
	for _, k := range lang.ProblemKinds {
		if k.ID == rule && len(a.problems) < 100 {
			a.problems = append(a.problems, lang.Problem{Rule: rule, Severity: k.Severity, Message: message, Mend: k.Mend})
		}
	}
}

// zip lists a zip file by its directory.
func (a *archive) zip(f *os.File) error {
	st, err := f.Stat()
	if err != nil {
		return err
	}
	r, err := zip.NewReader(f, st.Size())
	if err != nil && !errors.Is(err, zip.ErrInsecurePath) {
		a.problem("archive-broken", "The archive cannot be read: "+err.Error()+".")
		return nil
	}
	total := uint64(0)
	for i, z := range r.File {
		if z.FileInfo().IsDir() {
			continue
		}
		total += z.UncompressedSize64
		if i >= maxMembers || total > maxUnpacked || z.UncompressedSize64 > maxExpansion*z.CompressedSize64+1<<20 {
			a.problem("archive-too-large", "From the member "+printable(z.Name)+" on the archive unpacks to more than a run takes; the rest was not read.")
			return nil
		}
		a.add(z.Name, z.Mode().IsRegular(), member{z.Open})
	}
	return nil
}

// tar lists a tar file; its members are read where they lie.
func (a *archive) tar(f *os.File, at io.ReaderAt) error {
	count := &counter{r: f}
	t := tar.NewReader(count)
	for i := 0; ; i++ {
		h, err := t.Next()
		switch {
		case errors.Is(err, io.EOF):
			return nil
		case err != nil && !errors.Is(err, tar.ErrInsecurePath):
			a.problem("archive-broken", fmt.Sprintf("The archive breaks off at byte %d: %v.", count.n, err))
			return nil
		case i >= maxMembers:
			a.problem("archive-too-large", "The archive holds more members than a run takes; the rest was not read.")
			return nil
		}
		switch h.Typeflag {
		case tar.TypeDir, tar.TypeXGlobalHeader:
			continue
		}
		from, size := count.n, h.Size
		a.add(h.Name, h.Typeflag == tar.TypeReg && !sparse(h), member{func() (io.ReadCloser, error) {
			return io.NopCloser(io.NewSectionReader(at, from, size)), nil
		}})
	}
}

// sparse members do not lie in the file as they unpack.
func sparse(h *tar.Header) bool {
	for k := range h.PAXRecords {
		if strings.HasPrefix(k, "GNU.sparse.") {
			return true
		}
	}
	return false
}

// counter says how far a file has been read. The reader of tar reads no further
// than the end of a header before it hands it out.
type counter struct {
	r *os.File
	n int64
}

func (c *counter) Read(p []byte) (int, error) {
	n, err := c.r.Read(p)
	c.n += int64(n)
	return n, err
}

// Seek lets the reader of tar jump over members.
func (c *counter) Seek(offset int64, whence int) (int64, error) {
	n, err := c.r.Seek(offset, whence)
	if err == nil {
		c.n = n
	}
	return n, err
}

// tarGz unpacks a compressed tar file into an unnamed temporary file, bounded,
// because its members come in the order of packing and are wanted by path.
func (a *archive) tarGz(f *os.File) error {
	st, err := f.Stat()
	if err != nil {
		return err
	}
	z, err := gzip.NewReader(f)
	if err != nil {
		a.problem("archive-broken", "The archive cannot be read: "+err.Error()+".")
		return nil
	}
	tmp, err := os.CreateTemp("", "tundish-*.tar")
	if err != nil {
		return fmt.Errorf("making room for it: %w", err)
	}
	os.Remove(tmp.Name()) // gone when it is closed, whatever happens
	packed := f.Close
	a.close = func() error { return errors.Join(tmp.Close(), packed()) }
	most := min(int64(maxUnpacked), maxExpansion*st.Size()+1<<20)
	n, err := io.Copy(tmp, io.LimitReader(z, most+1))
	switch {
	case n > most:
		a.problem("archive-too-large", "The archive unpacks to more than a run takes; nothing of it was read.")
		return nil
	case err != nil && (errors.Is(err, gzip.ErrChecksum) || errors.Is(err, gzip.ErrHeader) || errors.Is(err, io.ErrUnexpectedEOF)):
		a.problem("archive-broken", fmt.Sprintf("The archive breaks off after %d unpacked bytes: %v.", n, err))
	case err != nil:
		a.problem("archive-broken", "The archive cannot be read: "+err.Error()+".")
	}
	if _, err := tmp.Seek(0, io.SeekStart); err != nil {
		return err
	}
	return a.tar(tmp, tmp)
}

// read gives the text of a member.
func (a *archive) read(name string) (string, error) {
	m, ok := a.members[name]
	if !ok {
		return "", errors.New("no such file in the archive")
	}
	r, err := m.open()
	if err != nil {
		return "", err
	}
	defer r.Close()
	return readLimited(r)
}

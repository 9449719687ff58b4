package main

import (
	"archive/tar"
	"archive/zip"
	"bufio"
	"bytes"
	"compress/flate"
	"compress/gzip"
	"errors"
	"fmt"
	"hash/crc32"
	"io"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"sync"

	"example.org/tundish/lang"
)

// Limits of what an archive may unpack to. Specifications are a few kB each, so
// an honest archive stays far below.
const (
	maxMembers   = 1 << 20
	maxUnpacked  = 4 << 30 // bytes of all members together
	maxExpansion = 200     // unpacked over packed bytes, beyond the first MiB
)

// archive is a packed folder of specifications, read without unpacking it.
// Its members are named like files in a folder of the archive's name.
type archive struct {
	name     string // as the user gave it
	at       io.ReaderAt
	members  []member // sorted by name when the archive is open
	block    []byte   // the names, one behind the other
	problems []lang.Problem
	close    func() error
}

// member is one file of an archive: where it lies in what the archive reads. It
// has no pointers, so that a hundred thousand of them cost the collector nothing.
type member struct {
	name   place
	from   int64 // of the packed bytes
	packed int64
	size   int64
	crc    uint32
	method uint16
	locked bool // encrypted
}

// stored is the method of members that are not packed.
const stored = zip.Store

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
	a := &archive{name: filepath.ToSlash(name), at: f, close: f.Close}
	switch n := strings.ToLower(name); {
	case strings.HasSuffix(n, ".zip"):
		err = a.zip(f)
	case strings.HasSuffix(n, ".tar"):
		err = a.tar(f)
	default:
		err = a.tarGz(f)
	}
	if err != nil {
		f.Close()
		return nil, fmt.Errorf("reading %s: %w", name, err)
	}
	a.order()
	return a, nil
}

// order sorts the members by name. Of two of a name the later counts, as when
// unpacking.
func (a *archive) order() {
	slices.Reverse(a.members)
	slices.SortStableFunc(a.members, func(x, y member) int { return bytes.Compare(a.nameOf(x), a.nameOf(y)) })
	a.members = slices.CompactFunc(a.members, func(x, y member) bool { return bytes.Equal(a.nameOf(x), a.nameOf(y)) })
}

func (a *archive) nameOf(m member) []byte {
	return a.block[m.name.from : m.name.from+uint64(m.name.length)]
}

// names lists the specifications of the archive in order.
func (a *archive) names() []string {
	out := make([]string, len(a.members))
	for i, m := range a.members {
		out[i] = string(a.nameOf(m))
	}
	return out
}

func (a *archive) find(name string) (member, bool) {
	i, ok := slices.BinarySearchFunc(a.members, name, func(m member, name string) int { return strings.Compare(string(a.nameOf(m)), name) })
	if !ok {
		return member{}, false
	}
	return a.members[i], true
}

func (a *archive) has(name string) bool {
	_, ok := a.find(name)
	return ok
}

// wanted gives the clean name of a member that is a specification. One whose name
// leads out of the archive is a problem of the archive.
func (a *archive) wanted(name string, regular bool) (clean string, ok bool) {
	clean = path.Clean(strings.ReplaceAll(name, `\`, "/"))
	if !regular || path.IsAbs(clean) || clean == ".." || strings.HasPrefix(clean, "../") || len(clean) > 1 && clean[1] == ':' {
		a.problem("member-outside", "The member "+printable(name)+" is a link or leads out of the archive; it was not read.")
		return "", false
	}
	return clean, strings.HasSuffix(clean, ".plant") && !hidden(clean)
}

func (a *archive) add(name string, m member) {
	m.name = place{from: uint64(len(a.block)), length: uint32(len(name))}
	a.block = append(a.block, name...)
	a.members = append(a.members, m)
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
		name, ok := a.wanted(z.Name, z.Mode().IsRegular())
		if !ok {
			continue
		}
		m := member{packed: int64(z.CompressedSize64), size: int64(z.UncompressedSize64), crc: z.CRC32, method: z.Method, locked: z.Flags&1 != 0}
		if m.from, err = z.DataOffset(); err != nil {
			m.from = -1 // told when it is read
		}
		a.add(name, m)
	}
	return nil
}

// tar lists a tar file; its members are read where they lie.
func (a *archive) tar(f *os.File) error {
	st, err := f.Stat()
	if err != nil {
		return err
	}
	count := &counter{r: f}
	return a.tarMembers(count, func(h *tar.Header, _ *tar.Reader) (member, error) {
		if h.Size > st.Size()-count.n {
			return member{}, io.ErrUnexpectedEOF
		}
		return member{from: count.n, packed: h.Size, size: h.Size, method: stored}, nil
	})
}

// tarMembers goes over the members of a tar file; take says where the one at hand
// is to be had.
func (a *archive) tarMembers(r io.Reader, take func(*tar.Header, *tar.Reader) (member, error)) error {
	t := tar.NewReader(r)
	last := "the start"
	for i := 0; ; i++ {
		h, err := t.Next()
		switch {
		case errors.Is(err, io.EOF):
			return nil
		case errors.Is(err, errTooLarge):
			a.problem("archive-too-large", "Behind "+last+" the archive unpacks to more than a run takes; the rest was not read.")
			return nil
		case err != nil && !errors.Is(err, tar.ErrInsecurePath):
			a.problem("archive-broken", fmt.Sprintf("The archive breaks off behind %s: %v.", last, err))
			return nil
		case i >= maxMembers:
			a.problem("archive-too-large", "The archive holds more members than a run takes; the rest was not read.")
			return nil
		}
		if h.Typeflag == tar.TypeDir || h.Typeflag == tar.TypeXGlobalHeader {
			continue
		}
		last = "the member " + printable(h.Name)
		name, ok := a.wanted(h.Name, h.Typeflag == tar.TypeReg && !sparse(h))
		if !ok {
			continue
		}
		m, err := take(h, t)
		if err != nil { // of the reader it comes again with the next member
			continue
		}
		a.add(name, m)
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

var errTooLarge = errors.New("too large")

// bounded reads up to a number of bytes and then fails.
type bounded struct {
	r    io.Reader
	left int64
}

func (b *bounded) Read(p []byte) (int, error) {
	if b.left <= 0 {
		return 0, errTooLarge
	}
	n, err := b.r.Read(p[:min(int64(len(p)), b.left)])
	b.left -= int64(n)
	return n, err
}

// tarGz goes once through a compressed tar file and keeps its specifications in an
// unnamed temporary file, because they come in the order of packing and are wanted
// by path.
func (a *archive) tarGz(f *os.File) error {
	st, err := f.Stat()
	if err != nil {
		return err
	}
	z, err := gzip.NewReader(bufio.NewReaderSize(f, 64<<10))
	if err != nil {
		a.problem("archive-broken", "The archive cannot be read: "+err.Error()+".")
		return nil
	}
	tmp, err := os.CreateTemp("", "tundish-*.tar")
	if err != nil {
		return fmt.Errorf("making room for it: %w", err)
	}
	os.Remove(tmp.Name()) // gone when it is closed, whatever happens
	a.at, a.close = tmp, func() error {
		tmp.Close()
		os.Remove(tmp.Name()) // where an open file cannot be removed
		return f.Close()
	}
	out := bufio.NewWriterSize(tmp, 256<<10)
	var written int64
	most := min(int64(maxUnpacked), maxExpansion*st.Size()+1<<20)
	err = a.tarMembers(&bounded{z, most}, func(h *tar.Header, t *tar.Reader) (member, error) {
		m := member{from: written, method: stored}
		// The writer keeps errors of its own until the end, but not those of t.
		n, err := io.Copy(struct{ io.Writer }{out}, io.LimitReader(t, lang.MaxFileSize+1))
		written += n
		m.packed, m.size = n, n
		return m, err
	})
	if e := out.Flush(); err == nil && e != nil {
		err = fmt.Errorf("making room for it: %w", e)
	}
	return err
}

// read gives the text of a member.
func (a *archive) read(name string) (string, error) {
	m, ok := a.find(name)
	switch {
	case !ok:
		return "", errors.New("no such file")
	case m.locked:
		return "", errors.New("it is encrypted")
	case m.from < 0:
		return "", zip.ErrFormat
	}
	packed := io.NewSectionReader(a.at, m.from, m.packed)
	switch m.method {
	case zip.Store:
		text, err := readLimited(packed)
		if err == nil && int64(len(text)) < min(m.size, lang.MaxFileSize+1) {
			err = io.ErrUnexpectedEOF
		}
		return text, m.sum(text, err)
	case zip.Deflate:
		z := inflaters.Get().(io.ReadCloser)
		defer inflaters.Put(z)
		if err := z.(flate.Resetter).Reset(packed, nil); err != nil {
			return "", err
		}
		text, err := readLimited(z)
		return text, m.sum(text, err)
	}
	return "", fmt.Errorf("it is packed by method %d, which is not known", m.method)
}

// inflaters are used again: each has a window of 32 kB.
var inflaters = sync.Pool{New: func() any { return flate.NewReader(nil) }}

// sum compares a text with the sum that the archive holds of it, where it does
// and the text was read whole.
func (m member) sum(text string, err error) error {
	if err == nil && m.crc != 0 && len(text) <= lang.MaxFileSize && crc32.ChecksumIEEE([]byte(text)) != m.crc {
		return zip.ErrChecksum
	}
	return err
}

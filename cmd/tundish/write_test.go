package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

const (
	loose = "plant   \"x\"\n\nbasis   {\naltitude 10   m   # high\n}\n"
	tidy  = "plant \"x\"\n\nbasis {\n  altitude        10 m  # high\n}\n"
)

func textOf(t *testing.T, p string) string {
	t.Helper()
	b, err := os.ReadFile(p)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// A link stays a link, and the file that it leads to is rewritten where it lies.
func TestWriteThroughLink(t *testing.T) {
	dir, other := t.TempDir(), t.TempDir()
	target := write(t, other, "p.plant", loose)
	if err := os.Chmod(target, 0o640); err != nil {
		t.Fatal(err)
	}
	link := filepath.Join(dir, "p.plant")
	if err := os.Symlink(target, link); err != nil {
		t.Skip("this system has no links: ", err)
	}
	if _, errs, code := tundish(t, "", "format", "--write", link); code != exitClean {
		t.Fatalf("exit %d: %s", code, errs)
	}
	if st, err := os.Lstat(link); err != nil || st.Mode()&os.ModeSymlink == 0 {
		t.Error("the link is no link any more")
	}
	if st, err := os.Stat(target); textOf(t, target) != tidy || err != nil || st.Mode().Perm() != 0o640 {
		t.Errorf("%q with mode %v", textOf(t, target), st.Mode())
	}
}

// fullDisk takes a few bytes and no more.
type fullDisk struct{ w io.Writer }

func (d fullDisk) Write(p []byte) (int, error) {
	n, _ := d.w.Write(p[:min(len(p), 10)])
	return n, errors.New("no space left on device")
}

// A full disk is told, the file stays as it was, and nothing is left beside it;
// the other files go on.
func TestWriteOnFullDisk(t *testing.T) {
	dir := t.TempDir()
	p := write(t, dir, "p.plant", loose)
	intoTemp = func(f *os.File) io.Writer { return fullDisk{f} }
	defer func() { intoTemp = func(f *os.File) io.Writer { return f } }()
	_, errs, code := tundish(t, "", "format", "--write", dir)
	if code != exitFailed || !strings.Contains(errs, "no space left") || !strings.Contains(errs, "p.plant") {
		t.Errorf("exit %d: %s", code, errs)
	}
	if textOf(t, p) != loose {
		t.Errorf("the file was changed: %q", textOf(t, p))
	}
	if left, err := os.ReadDir(dir); err != nil || len(left) != 1 {
		t.Errorf("left behind: %v", left)
	}
}

// A kill at any moment leaves each file whole: as it was or as it is to be.
func TestWriteKilled(t *testing.T) {
	dir := t.TempDir()
	body := strings.Repeat("# a line that stays\n", 200)
	const files = 300
	for i := range files {
		write(t, dir, fmt.Sprintf("p%03d.plant", i), loose+body)
	}
	killed := 0
	for i := range 6 {
		cmd := exec.Command(os.Args[0], "format", "--write", dir)
		cmd.Env = append(os.Environ(), "TUNDISH_TEST_PROCESS=1")
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(time.Duration(10+17*i) * time.Millisecond)
		if cmd.Process.Kill() == nil && cmd.Wait() != nil {
			killed++
		}
		for k := range files {
			if got := textOf(t, filepath.Join(dir, fmt.Sprintf("p%03d.plant", k))); got != loose+body && got != tidy+body {
				t.Fatalf("file %d is neither old nor new: %q", k, got)
			}
		}
	}
	if killed == 0 {
		t.Skip("this machine is so fast that no run was killed")
	}
}

package main

import (
	"archive/tar"
	"archive/zip"
	"bytes"
	"compress/gzip"
	"context"
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/tundish/check/report"
	"example.org/tundish/lang"
	"example.org/tundish/testdata/plants"
)

// packed is a member of a test archive.
type packed struct{ name, text string }

// randomFiles are plants at random, every fourth with a fault, and their
// catalogue, in folders.
func randomFiles(t testing.TB, n int) []packed {
	t.Helper()
	cat, err := os.ReadFile("../../examples/" + plants.Catalogue)
	if err != nil {
		t.Fatal(err)
	}
	var out []packed
	for i := range n {
		r := rand.New(rand.NewPCG(uint64(i), 3))
		text := plants.Sound(r)
		if i%4 == 3 {
			text, _ = plants.Seeded(r, text)
		}
		text = strings.Replace(text, `use "catalogue.plant"`, `use "../catalogue.plant"`, 1)
		out = append(out, packed{fmt.Sprintf("%02d/p%04d.plant", i%7, i), text})
	}
	return append(out, packed{plants.Catalogue, string(cat)})
}

func writeFolder(t testing.TB, dir string, files []packed) {
	t.Helper()
	for _, f := range files {
		p := filepath.Join(dir, f.name)
		if err := os.MkdirAll(filepath.Dir(p), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(p, []byte(f.text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
}

func zipped(t testing.TB, files []packed) []byte {
	t.Helper()
	var b bytes.Buffer
	w := zip.NewWriter(&b)
	for _, f := range files {
		m, err := w.Create(f.name)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := m.Write([]byte(f.text)); err != nil {
			t.Fatal(err)
		}
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func tarred(t testing.TB, files []packed) []byte {
	t.Helper()
	var b bytes.Buffer
	w := tar.NewWriter(&b)
	for _, f := range files {
		h := &tar.Header{Name: f.name, Typeflag: tar.TypeReg, Size: int64(len(f.text)), Mode: 0o644}
		if strings.HasPrefix(f.text, "-> ") {
			h.Typeflag, h.Size, h.Linkname = tar.TypeSymlink, 0, f.text[3:]
		}
		if err := w.WriteHeader(h); err != nil {
			t.Fatal(err)
		}
		if h.Size > 0 {
			if _, err := w.Write([]byte(f.text)); err != nil {
				t.Fatal(err)
			}
		}
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func gzipped(t testing.TB, b []byte) []byte {
	t.Helper()
	var out bytes.Buffer
	w := gzip.NewWriter(&out)
	if _, err := w.Write(b); err != nil {
		t.Fatal(err)
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// A folder and the same folder packed in each way give the same findings, with
// any number of jobs, byte for byte.
func TestArchives(t *testing.T) {
	files := randomFiles(t, 40)
	dir := t.TempDir()
	writeFolder(t, filepath.Join(dir, "plain"), files)
	reversed := append([]packed(nil), files...)
	for i, j := 0, len(reversed)-1; i < j; i, j = i+1, j-1 {
		reversed[i], reversed[j] = reversed[j], reversed[i]
	}
	for name, b := range map[string][]byte{"a.zip": zipped(t, reversed), "b.tar": tarred(t, reversed), "c.tar.gz": gzipped(t, tarred(t, files)), "d.tgz": gzipped(t, tarred(t, reversed))} {
		write(t, dir, name, string(b))
	}
	lint := func(name string, more ...string) string {
		out, errs, code := tundish(t, "", append([]string{"lint", "--format", "json", filepath.Join(dir, name)}, more...)...)
		if code != exitFindings || errs != "" {
			t.Fatalf("%s: exit %d, %s", name, code, errs)
		}
		return strings.ReplaceAll(out, filepath.ToSlash(filepath.Join(dir, name))+"/", "")
	}
	want := lint("plain", "--jobs", "1")
	var d report.Document
	if err := json.Unmarshal([]byte(want), &d); err != nil || d.Files != 41 || len(d.Findings) < 8 {
		t.Fatalf("%v: %d files, %d findings", err, d.Files, len(d.Findings))
	}
	for _, name := range []string{"plain", "a.zip", "b.tar", "c.tar.gz", "d.tgz"} {
		for _, jobs := range []string{"1", "2", "7"} {
			if got := lint(name, "--jobs", jobs); got != want {
				t.Errorf("%s with %s jobs: %s", name, jobs, lineDiff(want, got))
			}
		}
	}
	text := func(jobs string) string {
		out, _, _ := tundish(t, "", "lint", "--jobs", jobs, filepath.Join(dir, "a.zip"))
		return out
	}
	if text("1") != text("5") {
		t.Error("the text depends on the number of jobs")
	}
}

// The parts of a run, joined, are the run.
func TestShardAndMerge(t *testing.T) {
	dir := t.TempDir()
	writeFolder(t, filepath.Join(dir, "plain"), randomFiles(t, 25))
	plain := filepath.Join(dir, "plain")
	whole, _, _ := tundish(t, "", "lint", "--format", "json", plain)
	var parts []string
	for k := 1; k <= 3; k++ {
		out, _, _ := tundish(t, "", "lint", "--format", "json", "--shard", fmt.Sprintf("%d/3", k), plain)
		parts = append(parts, write(t, dir, fmt.Sprintf("part%d.json", k), out))
	}
	out, errs, code := tundish(t, "", "merge", parts[2], parts[0], parts[1])
	if out != whole || code != exitFindings {
		t.Errorf("exit %d %s: %s", code, errs, lineDiff(whole, out))
	}
	for _, bad := range [][]string{{parts[0], parts[1]}, {parts[0], parts[0], parts[1], parts[2]}, {write(t, dir, "x.json", "{}")}, {write(t, dir, "y.json", whole)}} {
		if _, errs, code := tundish(t, "", append([]string{"merge"}, bad...)...); code == exitClean || errs == "" {
			t.Errorf("%v: exit %d, %q", bad, code, errs)
		}
	}
}

// What leads out of an archive, unpacks without end or breaks off is a finding;
// the rest is checked.
func TestHostileArchives(t *testing.T) {
	dir := t.TempDir()
	sound := packed{"in/p.plant", plants.Sound(rand.New(rand.NewPCG(1, 1)))}
	cat := randomFiles(t, 0)[0]
	cat.name = "in/" + cat.name
	secret := write(t, dir, "secret.plant", "catalogue \"s\"\n")
	whole := tarred(t, []packed{sound, cat})
	bomb := zipped(t, []packed{cat, sound, {"in/z.plant", strings.Repeat("#", 48<<20)}})
	for name, c := range map[string]struct {
		body  []byte
		rule  string
		files int
	}{
		"up.zip":      {zipped(t, []packed{{"../secret.plant", "x"}, sound, cat}), "member-outside", 3},
		"abs.tar":     {tarred(t, []packed{{secret, "x"}, sound, cat}), "member-outside", 3},
		"link.tar":    {tarred(t, []packed{{"in/l.plant", "-> " + secret}, sound, cat}), "member-outside", 3},
		"use.zip":     {zipped(t, []packed{sound, cat, {"q.plant", "plant \"q\"\nuse \"../secret.plant\"\n"}}), "file-missing", 3},
		"bomb.zip":    {bomb, "archive-too-large", 3},
		"broken.zip":  {[]byte("PK\x03\x04 and then nothing"), "archive-broken", 1},
		"cut.tar":     {whole[:len(whole)-len(whole)/3], "archive-broken", 2},
		"cut.tar.gz":  {gzipped(t, whole)[:900], "archive-broken", 1},
		"noise.tgz":   {[]byte("this is no archive"), "archive-broken", 1},
		"bomb.tar.gz": {gzipped(t, tarred(t, []packed{{"z.plant", strings.Repeat("#", 48<<20)}})), "archive-too-large", 1},
	} {
		p := write(t, dir, name, string(c.body))
		out, errs, code := tundish(t, "", "lint", "--format", "json", p)
		var d report.Document
		if err := json.Unmarshal([]byte(out), &d); err != nil || code != exitFindings {
			t.Errorf("%s: exit %d, %v, %s", name, code, err, errs)
			continue
		}
		found := false
		for _, f := range d.Findings {
			found = found || f.Rule == c.rule
			if strings.Contains(f.Message, "catalogue \"s\"") {
				t.Errorf("%s: read a file outside", name)
			}
		}
		if !found || d.Files < c.files {
			t.Errorf("%s: %d files, no %s: %+v", name, d.Files, c.rule, d.Findings)
		}
	}
}

// Paths come from patterns and lists too, and one bad file stops no other.
func TestPathsOfARun(t *testing.T) {
	dir := t.TempDir()
	files := randomFiles(t, 12)
	writeFolder(t, dir, files)
	count := func(stdin string, args ...string) (int, int) {
		out, _, code := tundish(t, stdin, append([]string{"lint", "--format", "json"}, args...)...)
		var d report.Document
		if err := json.Unmarshal([]byte(out), &d); err != nil {
			t.Fatalf("%v: %v", args, err)
		}
		return d.Files, code
	}
	if n, _ := count("", filepath.Join(dir, "*", "*.plant")); n != 12 {
		t.Errorf("a pattern takes %d files", n)
	}
	if n, _ := count("", filepath.Join(dir, "**", "*.plant")); n != 13 {
		t.Errorf("a pattern over folders takes %d files", n)
	}
	list := filepath.Join(dir, files[0].name) + "\n" + filepath.Join(dir, files[1].name) + "\r\n\n"
	if n, _ := count(list, "--files-from", "-"); n != 2 {
		t.Errorf("a list takes %d files", n)
	}
	if n, _ := count(strings.ReplaceAll(list, "\n", "\x00"), "--files-from", "-"); n != 2 {
		t.Errorf("a list with NUL takes %d files", n)
	}
	gone := filepath.Join(dir, "02")
	if err := os.Remove(filepath.Join(gone, "p0002.plant")); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink("nowhere.plant", filepath.Join(gone, "p0002.plant")); err != nil {
		t.Skip("no links on this system")
	}
	if n, code := count("", dir); n != 12 || code != exitFailed {
		t.Errorf("with a file that cannot be read: %d files, exit %d", n, code)
	}
	if _, _, code := tundish(t, "", "lint", filepath.Join(dir, "no*thing")); code != exitFailed {
		t.Errorf("a pattern that nothing fits: exit %d", code)
	}
}

// An interrupted run hands out what is done, in order, and says how much that is;
// a breakdown of the tool is told of its file alone.
func TestInterruptAndShield(t *testing.T) {
	const all = 500
	jobs := func(yield func(job) bool) {
		for i := range all {
			if !yield(job{fmt.Sprintf("%03d", i), faultySource{}}) {
				return
			}
		}
	}
	ctx, cancel := context.WithCancel(context.Background())
	defer cancel()
	next, faults := 0, 0
	n := judgeAll(ctx, jobs, 4, lang.Date{}, func(_ job, v verdict) verdict { return v }, func(j job, v verdict) {
		if j.name != fmt.Sprintf("%03d", next) {
			t.Fatalf("job %s came in place %d", j.name, next)
		}
		if v.rep != nil && len(v.rep.Findings) == 1 && v.rep.Findings[0].Rule == "not-finished" {
			faults++
		}
		if v.err != nil && strings.Contains(v.err.Error(), "broke down") {
			faults++
		}
		if next++; next == 100 {
			cancel()
		}
	})
	if n != next || n < 100 || n > 300 {
		t.Errorf("%d jobs of 500 were done, %d handed out", n, next)
	}
	if faults != 2 {
		t.Errorf("%d faults were told", faults)
	}
}

// faultySource breaks down on one job when it is read and on one when it is
// judged; the others are not to be had.
type faultySource struct{}

func (faultySource) read(name string) (string, error) {
	if name == "017" {
		panic("a fault of ours")
	}
	return "", nil
}

func (faultySource) space(name string) (*lintSpace, error) {
	if name == "007" {
		panic("a fault of ours")
	}
	return nil, fmt.Errorf("job %s", name)
}

// Over many files the text ends with the rules that found most; --show leaves
// findings out of the output and not out of the counts.
func TestOverviewAndShow(t *testing.T) {
	dir := t.TempDir()
	writeFolder(t, dir, randomFiles(t, 40))
	all, _, code := tundish(t, "", "lint", dir)
	errors, _, again := tundish(t, "", "lint", "--show", "error", dir)
	if code != exitFindings || again != code {
		t.Errorf("exit %d and %d", code, again)
	}
	end := func(s string) string { return s[strings.LastIndex(s, "\nRead "):] }
	if end(all) != end(errors) {
		t.Errorf("counts differ: %s %s", end(all), end(errors))
	}
	if strings.Contains(errors, "    note at") || strings.Contains(errors, "    warning at") || !strings.Contains(errors, "    error at") {
		t.Error("--show error prints something else than errors")
	}
	if !strings.Contains(all, "    note at") || !strings.Contains(errors, " of 41 files\n") || strings.Index(errors, "\nerror ") > strings.Index(errors, "\nnote ") {
		t.Errorf("no overview: %s", errors[max(0, len(errors)-2000):])
	}
	var d report.Document
	out, _, _ := tundish(t, "", "lint", "--show", "warning", "--format", "json", dir)
	if err := json.Unmarshal([]byte(out), &d); err != nil || d.Files != 41 {
		t.Fatalf("%v: %d files", err, d.Files)
	}
	for _, f := range d.Findings {
		if f.Severity == "note" {
			t.Fatalf("a note: %+v", f)
		}
	}
}

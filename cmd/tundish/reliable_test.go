package main

import (
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"example.org/tundish/check/report"
)

// started is the tool as a process that can be sent signals.
func started(t *testing.T, stdout *os.File, args ...string) (*exec.Cmd, *strings.Builder) {
	t.Helper()
	cmd := exec.Command(os.Args[0], args...)
	cmd.Env = append(os.Environ(), "TUNDISH_TEST_PROCESS=1")
	errs := &strings.Builder{}
	cmd.Stdout, cmd.Stderr = stdout, errs
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	return cmd, errs
}

// Output that cannot be written ends the run and is told.
func TestOutputThatFails(t *testing.T) {
	full, err := os.OpenFile("/dev/full", os.O_WRONLY, 0)
	if err != nil {
		t.Skip("this system has no full device")
	}
	defer full.Close()
	dir := t.TempDir()
	writeFolder(t, dir, randomFiles(t, 20))
	for _, format := range []string{"text", "json", "jsonl", "sarif", "junit"} {
		cmd, errs := started(t, full, "lint", "--format", format, dir)
		_ = cmd.Wait()
		if code := cmd.ProcessState.ExitCode(); code != exitFailed || !strings.Contains(errs.String(), "no space left") {
			t.Errorf("%s: exit %d, %q", format, code, errs)
		}
	}
}

// What cannot be read is told in its place, and the rest is checked.
func TestBadFilesAmongGood(t *testing.T) {
	dir := t.TempDir()
	files := randomFiles(t, 12)
	writeFolder(t, dir, files)
	write(t, dir, "broken.zip", "PK no")
	write(t, dir, "noise.plant", "\xff\xfe\x00{{{{")
	if err := os.Mkdir(filepath.Join(dir, "folder.plant"), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink("loop.plant", filepath.Join(dir, "loop.plant")); err != nil {
		t.Skip("this system has no links: ", err)
	}
	locked := filepath.Join(dir, "locked")
	if err := os.Mkdir(locked, 0); err != nil {
		t.Fatal(err)
	}
	defer os.Chmod(locked, 0o755)
	out, errs, code := tundish(t, "", "lint", "--format", "json", filepath.Join(dir, "gone.plant"), filepath.Join(dir, "gone.zip"), filepath.Join(dir, "broken.zip"), dir)
	var d report.Document
	if err := json.Unmarshal([]byte(out), &d); err != nil || code != exitFailed || d.Files != 15 {
		t.Errorf("exit %d, %v, %d files: %s", code, err, d.Files, errs)
	}
	for _, name := range []string{"gone.plant", "gone.zip", "loop.plant"} {
		if !strings.Contains(errs, name) {
			t.Errorf("%s is not told: %s", name, errs)
		}
	}
	if os.Geteuid() != 0 && !strings.Contains(errs, "locked") {
		t.Errorf("the locked folder is not told: %s", errs)
	}
}

// Nothing is drawn where nobody looks: the bar needs a terminal, and CI says that
// it has none even where there is one.
func TestBarIsQuiet(t *testing.T) {
	if b := newBar(std{err: &strings.Builder{}}, 1000); b.p != nil {
		t.Error("a bar is drawn into a text")
	}
	tty, err := os.OpenFile("/dev/tty", os.O_WRONLY, 0)
	if err == nil {
		defer tty.Close()
		was := os.Stderr
		os.Stderr = tty
		defer func() { os.Stderr = was }()
		t.Setenv("CI", "true")
		if b := newBar(std{err: os.Stderr}, 1000); b.p != nil {
			t.Error("a bar is drawn in CI")
		}
	}
	dir := t.TempDir()
	writeFolder(t, dir, randomFiles(t, 60))
	out, err := os.Create(filepath.Join(t.TempDir(), "out"))
	if err != nil {
		t.Fatal(err)
	}
	defer out.Close()
	cmd, errs := started(t, out, "lint", dir)
	_ = cmd.Wait()
	if errs.String() != "" {
		t.Errorf("a run that nobody watches says %q", errs)
	}
}

// A path that "use" names stays in the workspace, whatever it looks like, on disk
// and in archives.
func TestUseStaysInside(t *testing.T) {
	outside := t.TempDir()
	secret := write(t, outside, "secret.plant", "catalogue \"secret\"\nunit-type Secret-1 {\n}\n")
	dir := t.TempDir()
	rel, err := filepath.Rel(dir, secret)
	if err != nil {
		t.Fatal(err)
	}
	for i, name := range []string{secret, rel, "./" + rel, "sub/../" + rel, `..\..\secret.plant`, "file://" + secret, `C:\secret.plant`, "//" + secret, "linked/secret.plant"} {
		text := fmt.Sprintf("plant \"x\"\nuse %q\nunits U1 {\n  type Secret-1\n}\n", filepath.ToSlash(name))
		p := write(t, dir, fmt.Sprintf("p%d.plant", i), text)
		packed := write(t, dir, fmt.Sprintf("p%d.zip", i), string(zipped(t, []packed{{"p.plant", text}})))
		if name == "linked/secret.plant" {
			if err := os.Symlink(outside, filepath.Join(dir, "linked")); err != nil {
				continue
			}
		}
		for _, file := range []string{p, packed} {
			out, _, code := tundish(t, "", "lint", "--format", "json", file)
			var d report.Document
			if err := json.Unmarshal([]byte(out), &d); err != nil || code != exitFindings {
				t.Errorf("%q: exit %d, %v", name, code, err)
			}
			told, known := false, true
			for _, f := range d.Findings {
				told = told || f.Rule == "file-missing" || f.Rule == "use-outside" || f.Rule == "cannot-read"
				known = known && !strings.Contains(f.Message, "Secret-1")
			}
			if !told || known {
				t.Errorf("%q in %s: %+v", name, filepath.Base(file), d.Findings)
			}
		}
	}
}

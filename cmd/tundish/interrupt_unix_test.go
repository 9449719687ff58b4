//go:build unix

package main

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"example.org/tundish/check/report"
)

// An interrupt ends a run with what is done: whole output, how far it came, and
// the exit code of a run that could not finish. The run waits at a pipe among the
// files until the interrupt is on its way, however fast the machine is.
func TestInterruptedProcess(t *testing.T) {
	dir := t.TempDir()
	writeFolder(t, dir, randomFiles(t, 600))
	pipe := filepath.Join(dir, "0.plant") // the first in order
	if err := syscall.Mkfifo(pipe, 0o600); err != nil {
		t.Fatal(err)
	}
	out, err := os.Create(filepath.Join(t.TempDir(), "out"))
	if err != nil {
		t.Fatal(err)
	}
	defer out.Close()
	cmd, errs := started(t, out, "lint", "--format", "json", "--jobs", "1", pipe, dir)
	text, err := os.OpenFile(pipe, os.O_WRONLY, 0) // returns when the run reads it
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Process.Signal(os.Interrupt); err != nil {
		t.Fatal(err)
	}
	if _, err := fmt.Fprintln(text, `plant "late"`); err != nil {
		t.Fatal(err)
	}
	if err := text.Close(); err != nil {
		t.Fatal(err)
	}
	err = cmd.Wait()
	if code := cmd.ProcessState.ExitCode(); code != exitFailed || !strings.Contains(errs.String(), "interrupted after") {
		t.Fatalf("exit %d, %v: %s", code, err, errs)
	}
	var d report.Document
	if err := json.Unmarshal([]byte(textOf(t, out.Name())), &d); err != nil {
		t.Fatalf("the output is not whole: %v", err)
	}
	if d.Files == 0 || d.Files > 600 || !strings.Contains(errs.String(), fmt.Sprintf("after %d of 602 files", d.Files)) {
		t.Errorf("%d files: %s", d.Files, errs)
	}
}

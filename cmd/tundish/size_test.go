package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// The proposal for the faulty example mends its gas pipe, header and opening;
// --write puts exactly that into the file, and the linter agrees.
func TestSize(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{"l-shaped-faulty.plant", "catalogue.plant"} {
		b, err := os.ReadFile("../../examples/" + name)
		if err != nil {
			t.Fatal(err)
		}
		write(t, dir, name, string(b))
	}
	file := filepath.Join(dir, "l-shaped-faulty.plant")
	out, errs, code := tundish(t, "", "size", file)
	if code != exitClean || errs != "" {
		t.Fatalf("exit %d: %s", code, errs)
	}
	for _, want := range []string{"G1 (line 73): DN50 becomes DN65", "Flow-H (line 82): DN80 becomes DN125", "not smaller: in DN100: Water runs through Flow-H", "-  pipe G1         steel DN50", "+  pipe G1         steel DN65", "permits building or firing"} {
		if !strings.Contains(out, want) {
			t.Errorf("the text lacks %q:\n%s", want, out)
		}
	}
	out, _, code = tundish(t, "", "size", file, "--format", "json", "--write")
	var doc sizeDocument
	if err := json.Unmarshal([]byte(out), &doc); err != nil || code != exitClean {
		t.Fatalf("exit %d, %v", code, err)
	}
	if doc.After.Errors >= doc.Before.Errors || len(doc.Changes) == 0 || doc.Diff == "" {
		t.Errorf("%+v", doc)
	}
	got, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	for _, gone := range []string{"steel DN50 16 m", "steel DN80 2.6 m", "1700 cm2"} {
		if strings.Contains(string(got), gone) {
			t.Errorf("the file still has %q", gone)
		}
	}
	d, _ := lintJSON(t, "", file)
	for _, f := range d.Findings {
		if f.Rule == "gas-drop-over-limit" || f.Rule == "header-too-fast" || f.Rule == "opening-too-small" {
			t.Errorf("left: %s", f.Message)
		}
	}
	if _, _, code := tundish(t, "", "size"); code != exitUse {
		t.Errorf("without a file: exit %d", code)
	}
}

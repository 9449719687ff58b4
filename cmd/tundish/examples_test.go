package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"

	"example.org/tundish/check"
	"example.org/tundish/check/report"
)

var update = flag.Bool("update", false, "write the golden files anew")

// The sound examples give nothing at or above a warning, and leave no question
// open.
func TestSoundExamples(t *testing.T) {
	for _, f := range []string{"in-line", "back-to-back", "us-units"} {
		t.Run(f, func(t *testing.T) {
			out, _, code := tundish(t, "", "lint", "--fail-on", "warning", "examples/"+f+".plant")
			if code != exitClean {
				t.Errorf("exit %d\n%s", code, out)
			}
			if !strings.Contains(out, "not evaluated 0") {
				t.Errorf("something was not evaluated:\n%s", out)
			}
			if !strings.Contains(out, "no permission to build or to fire") {
				t.Error("the closing caution is missing")
			}
		})
	}
}

// The faulty example gives exactly the findings of the golden file: place,
// severity, rule, part, found and limit of each.
func TestFaultyExample(t *testing.T) {
	out, _, code := tundish(t, "", "lint", "--format", "json", "examples/l-shaped-faulty.plant")
	if code != exitFindings {
		t.Errorf("exit %d, want %d", code, exitFindings)
	}
	var d report.Document
	if err := json.Unmarshal([]byte(out), &d); err != nil {
		t.Fatal(err)
	}
	var b strings.Builder
	for _, f := range d.Findings {
		fmt.Fprintf(&b, "%d:%d-%d:%d %s %s | %s | %s | %s\n", f.Line, f.Column, f.EndLine, f.EndColumn, f.Severity, f.Rule, f.Part, f.Found, f.Limit)
	}
	golden(t, "testdata/report/l-shaped-faulty.txt", b.String())
}

func golden(t *testing.T, path, got string) {
	t.Helper()
	if *update {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("%s differs (run with -update after looking):\n%s", path, lineDiff(string(want), got))
	}
}

func lineDiff(want, got string) string {
	w, g := strings.Split(want, "\n"), strings.Split(got, "\n")
	var b strings.Builder
	have := map[string]int{}
	for _, l := range g {
		have[l]++
	}
	for _, l := range w {
		if have[l] == 0 {
			b.WriteString("- " + l + "\n")
		}
		have[l]--
	}
	for l, n := range have {
		for ; n > 0; n-- {
			b.WriteString("+ " + l + "\n")
		}
	}
	return b.String()
}

// Every example is canonical, and formatting loses nothing of it.
func TestExamplesAreFormatted(t *testing.T) {
	out, _, code := tundish(t, "", "format", "--check", "examples")
	if code != exitClean {
		t.Errorf("not formatted:\n%s", out)
	}
}

// Applying every fix of the faulty example's mechanical findings leaves fewer
// findings and adds none that the text caused.
func TestFixesOfFaultyExample(t *testing.T) {
	t.Chdir(root)
	text, err := os.ReadFile("examples/l-shaped-faulty.plant")
	if err != nil {
		t.Fatal(err)
	}
	w, err := openWorkspace("examples")
	if err != nil {
		t.Fatal(err)
	}
	defer w.close()
	rep := w.checkText("examples/l-shaped-faulty.plant", string(text), testDay, &check.Settings{})
	fixed := applyBest(string(text), rep)
	after := w.checkText("examples/l-shaped-faulty.plant", fixed, testDay, &check.Settings{})
	if len(after.Findings) >= len(rep.Findings) {
		t.Errorf("%d findings before the fixes, %d after", len(rep.Findings), len(after.Findings))
	}
	for i := range after.Findings {
		f := &after.Findings[i]
		if f.Source == report.LanguageSource {
			t.Errorf("a fix broke the text: %s: %s", f.Rule, f.Message)
		}
	}
}

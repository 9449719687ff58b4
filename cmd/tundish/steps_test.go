package main

import (
	"encoding/csv"
	"encoding/json"
	"os"
	"regexp"
	"strings"
	"testing"
)

// lineNumber is the place of a statement; the golden files leave it out, so that
// an example may grow elsewhere.
var lineNumber = regexp.MustCompile(`\(line \d+\)`)

// The printed order of the examples, whole.
func TestStepsText(t *testing.T) {
	for _, name := range []string{"back-to-back", "l-shaped-faulty", "us-units"} {
		out, errs, code := tundish(t, "", "steps", "examples/"+name+".plant")
		if code != exitClean || errs != "" {
			t.Fatalf("%s: exit %d %s", name, code, errs)
		}
		golden(t, "testdata/steps/"+name+".txt", lineNumber.ReplaceAllString(out, "(line n)"))
	}
}

type stepsOutput struct {
	Record string
	Steps  []struct {
		Step     string
		After    []string
		Parts    []struct{ Quantity float64 }
		States   []struct{ State string }
		Progress *struct{ State string }
	}
	Wrong   []struct{ Step, Before string }
	Caution string
}

func TestStepsFormats(t *testing.T) {
	doc, _, code := tundish(t, "", "steps", "--format", "json", "examples/in-line.plant")
	var d stepsOutput
	if err := json.Unmarshal([]byte(doc), &d); err != nil || code != exitClean || d.Caution == "" {
		t.Fatal(err, code)
	}
	states := 0
	for _, s := range d.Steps {
		states += len(s.States)
		if s.Progress != nil {
			t.Errorf("%s: progress without a record", s.Step)
		}
	}
	if states != 1+5+1 { // alone, empty and four units, full of water
		t.Errorf("%d states of the frame", states)
	}
	table, _, code := tundish(t, "", "steps", "--format", "csv", "examples/in-line.plant")
	rows, err := csv.NewReader(strings.NewReader(table)).ReadAll()
	if err != nil || code != exitClean {
		t.Fatal(err, code)
	}
	seen, parts := map[string]bool{}, 0
	for _, r := range rows[1:] {
		seen[r[1]] = true
		if r[3] == "part" {
			parts++
		}
	}
	want := 0
	for _, s := range d.Steps {
		want += len(s.Parts)
	}
	if len(seen) != len(d.Steps) || parts != want {
		t.Errorf("%d of %d steps, %d of %d parts in the table", len(seen), len(d.Steps), parts, want)
	}
}

// A record shows how far the work is, given beside its plant or alone, and marks
// out of order end with 1.
func TestStepsOfRecord(t *testing.T) {
	const plant, record = "examples/back-to-back.plant", "examples/back-to-back-record.plant"
	dir := t.TempDir()
	for _, name := range []string{"back-to-back.plant", "catalogue.plant"} {
		b, err := os.ReadFile("../../examples/" + name)
		if err != nil {
			t.Fatal(err)
		}
		write(t, dir, name, string(b))
	}
	beside, errs, code := tundish(t, "", "steps", plant, "--record", record)
	alone, _, code2 := tundish(t, "", "steps", record)
	if code != exitClean || code2 != exitClean || beside != alone || !strings.Contains(beside, "handed") && !strings.Contains(beside, "handover") {
		t.Fatalf("exit %d and %d %s", code, code2, errs)
	}
	p := write(t, dir, "record.plant", `record "Test record, invented" issue 2026-05-01
of-plant "back-to-back.plant" revision R5
assembly {
  step survey done 2026-02-20 by F1
  step old-circuits done 2026-03-27 by F1
  step site done 2026-04-09 by F1
  step delivery done 2026-04-14 by F1
  step frame done 2026-04-20 by F1
  step supports done 2026-04-20 by F1
  step gas-manifold done 2026-04-21 by E1
  step return-header done 2026-04-21 by F1
  step flow-header done 2026-04-22 by F1
  step units part-done 2026-04-24 U1..U6 by F1
}
`)
	out, errs, code := tundish(t, "", "steps", "--format", "json", p)
	var d stepsOutput
	if err := json.Unmarshal([]byte(out), &d); err != nil || code != exitClean || d.Record == "" || len(d.Wrong) > 0 {
		t.Fatalf("%v, exit %d, wrong %v %s", err, code, d.Wrong, errs)
	}
	got := map[string][]string{}
	for _, s := range d.Steps {
		got[s.Progress.State] = append(got[s.Progress.State], s.Step)
	}
	for state, want := range map[string]string{
		"done":  "survey old-circuits site delivery frame supports gas-manifold return-header flow-header",
		"begun": "units", "next": "gas-supply separation air",
	} {
		if have := strings.Join(got[state], " "); have != want {
			t.Errorf("%s: %s, want %s", state, have, want)
		}
	}
	text, _, _ := tundish(t, "", "steps", p)
	if !strings.Contains(text, "begun for U1, U2, U3, U4, U5, U6, 2026-04-24 by F1") {
		t.Errorf("what is begun:\n%s", text)
	}
	b, err := os.ReadFile(p)
	if err != nil {
		t.Fatal(err)
	}
	early := write(t, dir, "early.plant", strings.Replace(string(b), "step flow-header done 2026-04-22 by F1\n", "step gas-strength-test done\n", 1))
	text, _, code = tundish(t, "", "steps", early)
	if code != exitFindings || !strings.Contains(text, "units is marked before flow-header is done") || !strings.Contains(text, "this plant has no step gas-strength-test") {
		t.Errorf("exit %d\n%s", code, text)
	}
}

func TestStepsBadUse(t *testing.T) {
	for _, c := range []struct {
		args []string
		code int
		want string
	}{
		{[]string{"steps"}, exitUse, "needs one file"},
		{[]string{"steps", "--format", "xml", "examples/in-line.plant"}, exitUse, "xml"},
		{[]string{"steps", "examples/catalogue.plant"}, exitFailed, "a catalogue, not a plant or a record"},
		{[]string{"steps", "examples/in-line.plant", "--record", "examples/us-units.plant"}, exitFailed, "a plant, not a record"},
		{[]string{"steps", "examples/in-line.plant", "--record", "examples/back-to-back-record.plant"}, exitFailed, "belongs to examples/back-to-back.plant"},
		{[]string{"steps", "examples/back-to-back-record.plant", "--record", "examples/back-to-back-record.plant"}, exitFailed, "a record, not a plant"},
		{[]string{"steps", "examples/none.plant"}, exitFailed, "none.plant"},
	} {
		out, errs, code := tundish(t, "", c.args...)
		if code != c.code || out != "" || !strings.Contains(errs, c.want) {
			t.Errorf("%v: exit %d %s", c.args, code, errs)
		}
	}
	if _, errs, code := tundish(t, "plant \"Test\"\nunits U1 {\n", "steps", "-"); code != exitFailed || !strings.Contains(errs, "cannot be read") {
		t.Errorf("a broken file: exit %d %s", code, errs)
	}
}

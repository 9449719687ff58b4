package main

import (
	"encoding/json"
	"encoding/xml"
	"strings"
	"testing"

	"github.com/owenrumney/go-sarif/v3/pkg/report/v210/sarif"
)

// SARIF output is valid by the OASIS schema, which the library carries, and
// holds every finding.
func TestSARIF(t *testing.T) {
	out, _, code := tundish(t, "", "lint", "--format", "sarif", "examples/l-shaped-faulty.plant")
	if code != exitFindings {
		t.Errorf("exit %d", code)
	}
	rep, err := sarif.FromBytes([]byte(out), sarif.WithStrictValidation())
	if err != nil {
		t.Fatal(err)
	}
	if err := rep.Validate(); err != nil {
		t.Errorf("not valid: %v", err)
	}
	d, _ := lintJSON(t, "", "examples/l-shaped-faulty.plant")
	if got := len(rep.Runs[0].Results); got != len(d.Findings) {
		t.Errorf("%d results, %d findings", got, len(d.Findings))
	}
}

func TestJUnit(t *testing.T) {
	out, _, _ := tundish(t, "", "lint", "--format", "junit", "examples")
	var suites struct {
		Tests    int `xml:"tests,attr"`
		Failures int `xml:"failures,attr"`
		Suites   []struct {
			Name     string `xml:"name,attr"`
			Tests    int    `xml:"tests,attr"`
			Failures int    `xml:"failures,attr"`
			Cases    []struct {
				Name      string `xml:"name,attr"`
				ClassName string `xml:"classname,attr"`
				Failure   *struct {
					Message string `xml:"message,attr"`
				} `xml:"failure"`
			} `xml:"testcase"`
		} `xml:"testsuite"`
	}
	if err := xml.Unmarshal([]byte(out), &suites); err != nil {
		t.Fatal(err)
	}
	d, _ := lintJSON(t, "", "examples")
	if suites.Failures != len(d.Findings) || len(suites.Suites) != d.Files {
		t.Errorf("%d failures in %d suites, %d findings", suites.Failures, len(suites.Suites), len(d.Findings))
	}
	for _, x := range suites.Suites { // what readers of the format ask for
		failed := 0
		for _, c := range x.Cases {
			if c.Name == "" || c.ClassName == "" {
				t.Errorf("%s: a case without name or class", x.Name)
			}
			if c.Failure != nil {
				failed++
				if c.Failure.Message == "" {
					t.Errorf("%s: a failure without a message", x.Name)
				}
			}
		}
		if x.Name == "" || x.Tests != len(x.Cases) || x.Failures != failed {
			t.Errorf("suite %q: says %d tests and %d failures, has %d and %d", x.Name, x.Tests, x.Failures, len(x.Cases), failed)
		}
	}
}

func TestJSONLines(t *testing.T) {
	out, _, _ := tundish(t, "", "lint", "--format", "jsonl", "examples/l-shaped-faulty.plant")
	d, _ := lintJSON(t, "", "examples/l-shaped-faulty.plant")
	lines := strings.Split(strings.TrimSpace(out), "\n")
	if len(lines) != len(d.Findings) {
		t.Errorf("%d lines, %d findings", len(lines), len(d.Findings))
	}
	for _, l := range lines {
		if !json.Valid([]byte(l)) {
			t.Errorf("not JSON: %s", l)
		}
	}
}

// A baseline of a run covers that run, and not a finding more.
func TestBaseline(t *testing.T) {
	out, _, _ := tundish(t, "", "lint", "--format", "json", "examples/l-shaped-faulty.plant")
	dir := t.TempDir()
	base := write(t, dir, "baseline.json", out)
	if got, _, code := tundish(t, "", "lint", "--baseline", base, "examples/l-shaped-faulty.plant"); code != exitClean {
		t.Errorf("exit %d\n%s", code, got)
	}
	less := strings.Replace(out, `"rule": "gas-drop-over-limit"`, `"rule": "something-else"`, 1)
	base = write(t, dir, "baseline.json", less)
	got, _, code := tundish(t, "", "lint", "--baseline", base, "examples/l-shaped-faulty.plant")
	if code != exitFindings || strings.Count(got, ", rule ") != 1 || !strings.Contains(got, "gas-drop-over-limit") {
		t.Errorf("exit %d\n%s", code, got)
	}
}

// A project replaces a limit with a reason, sets its gate, and unknown settings
// are findings.
func TestProjectSettings(t *testing.T) {
	dir := t.TempDir()
	p := write(t, dir, "p.plant", "plant \"x\"\nbasis {\n  jurisdiction UK\n  gas natural 38.9 MJ/m3 gross\n}\nunits U1 {\n  flue-data {\n    co2 11 % at full\n  }\n}\n")
	find := func() (n int, source string) {
		d, _ := lintJSON(t, "", p)
		for _, f := range d.Findings {
			if f.Rule == "co2-unusual" {
				n, source = n+1, f.Source
			}
		}
		return n, source
	}
	if n, _ := find(); n != 1 {
		t.Fatalf("%d findings without a project", n)
	}
	write(t, dir, "project.plant", "project \"office\"\nlimit co2-usual-most 11.5 % because \"units for a special gas\"\n")
	if n, _ := find(); n != 0 {
		t.Errorf("the project's limit does not count")
	}
	write(t, dir, "project.plant", "project \"office\"\nlimit co2-usual-mots 11.5 % because \"typing\"\n")
	d, _ := lintJSON(t, "", p)
	found := false
	for _, f := range d.Findings {
		found = found || f.Rule == "unknown-name" && strings.Contains(f.Message, "co2-usual-mots")
	}
	if !found {
		t.Errorf("the unknown limit is not reported: %+v", d.Findings)
	}
}

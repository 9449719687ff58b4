package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/tundish/check/report"
)

func TestExitCodes(t *testing.T) {
	for _, c := range []struct {
		name string
		args []string
		want int
	}{
		{"no command", nil, exitUse},
		{"unknown command", []string{"frobnicate"}, exitUse},
		{"unknown flag", []string{"lint", "--no-such-flag", "examples/in-line.plant"}, exitUse},
		{"no path", []string{"lint"}, exitUse},
		{"bad format", []string{"lint", "--format", "xml", "examples/in-line.plant"}, exitUse},
		{"bad gate", []string{"lint", "--fail-on", "panic", "examples/in-line.plant"}, exitUse},
		{"bad date", []string{"lint", "--today", "tomorrow", "examples/in-line.plant"}, exitUse},
		{"missing file", []string{"lint", "examples/no-such.plant"}, exitFailed},
		{"clean", []string{"lint", "examples/in-line.plant"}, exitClean},
		{"a note at the gate", []string{"lint", "--fail-on", "note", "examples/in-line.plant"}, exitFindings},
		{"findings", []string{"lint", "examples/l-shaped-faulty.plant"}, exitFindings},
		{"help", []string{"help"}, exitClean},
		{"help of a command", []string{"help", "lint"}, exitClean},
		{"unknown rule", []string{"explain", "no-such-rule"}, exitUse},
		{"unknown topic", []string{"calc", "no-such-topic"}, exitUse},
		{"missing input", []string{"calc", "friction-factor", "reynolds=1e5"}, exitUse},
		{"input out of range", []string{"calc", "water-properties", "temperature=900 degC"}, exitUse},
		{"wrong dimension", []string{"calc", "water-properties", "temperature=3 bar"}, exitUse},
	} {
		t.Run(c.name, func(t *testing.T) {
			if _, errs, code := tundish(t, "", c.args...); code != c.want {
				t.Errorf("exit %d, want %d (%s)", code, c.want, errs)
			}
		})
	}
}

func lintJSON(t *testing.T, stdin string, args ...string) (*report.Document, int) {
	t.Helper()
	out, errs, code := tundish(t, stdin, append([]string{"lint", "--format", "json"}, args...)...)
	var d report.Document
	if err := json.Unmarshal([]byte(out), &d); err != nil {
		t.Fatalf("%v: %s %s", err, out, errs)
	}
	return &d, code
}

// Bad input gets a clear finding with its place, and the rest of the file is
// still read.
func TestBadInput(t *testing.T) {
	const head = "plant \"x\"\nbasis {\n  jurisdiction UK\n  altitude 10 m\n"
	for _, c := range []struct {
		name, text string
		line       int
		rule, says string
	}{
		{"half typed", head + "  load Heating\n}\n", 5, "value-missing", "design load"},
		{"unknown statement", head + "  altitud 10 m\n}\n", 5, "unknown-statement", "altitude"},
		{"unknown word", head + "}\nunits U1 {\n  gas-valve DN25 leaver\n  type X-1\n}\n", 7, "unknown-word", "lever"},
		{"wrong unit", head + "  outside 3 bar\n}\n", 5, "wrong-unit", "temperature"},
		{"unknown unit", head + "  load Heating 510 kw\n}\n", 5, "unknown-unit", "kW"},
		{"no unit", head + "  load Heating 510\n}\n", 5, "unit-missing", "power"},
		{"missing catalogue", "use \"none.plant\"\n" + head + "}\n", 1, "file-missing", "none.plant"},
		{"path outside", "use \"../../../etc/x.plant\"\n" + head + "}\n", 1, "file-missing", "outside"},
		{"absolute path", "use \"/etc/passwd\"\n" + head + "}\n", 1, "use-outside", "relative"},
		{"NUL byte", head + "  outside \x00 -3 degC\n}\n", 5, "not-text", "NUL"},
		{"not UTF-8", head + "  # \xff\n}\n", 5, "not-text", "UTF-8"},
		{"text not closed", head + "  standard \"BS 6644\n}\n", 5, "cannot-read", "quotation"},
		{"brace astray", head + "}\n}\n", 6, "brace-astray", "no block"},
		{"brace missing", head, 2, "brace-missing", "not closed"},
		{"name in small letters", head + "  load heating-1 5 kW\n}\n", 5, "name-missing", "capital"},
		{"size as a name", head + "}\ngas-run {\n  pipe M1 steel DN50 2 m from A to B\n}\n", 7, "name-reserved", "M1"},
		{"ten thousand brackets", head + "}\nrequire " + strings.Repeat("(", 10000) + " because \"x\"\n", 6, "cannot-read", "longer"},
		{"sixty brackets", head + "}\nrequire " + strings.Repeat("(", 60) + " because \"x\"\n", 6, "cannot-read", "deep"},
	} {
		t.Run(c.name, func(t *testing.T) {
			dir := t.TempDir()
			d, code := lintJSON(t, "", write(t, dir, "bad.plant", c.text))
			if code != exitFindings && code != exitClean {
				t.Errorf("exit %d", code)
			}
			for _, f := range d.Findings {
				if f.Rule == c.rule && f.Line == c.line && strings.Contains(f.Message+f.Mend, c.says) {
					return
				}
			}
			t.Errorf("no finding %s on line %d that says %q:\n%+v", c.rule, c.line, c.says, d.Findings)
		})
	}
}

func TestHugeLine(t *testing.T) {
	dir := t.TempDir()
	p := write(t, dir, "huge.plant", "plant \"x\" "+strings.Repeat("a", 100<<20))
	d, code := lintJSON(t, "", p)
	if code != exitFindings || len(d.Findings) != 1 || d.Findings[0].Rule != "file-too-large" {
		t.Errorf("exit %d, %+v", code, d.Findings)
	}
}

func TestCircularUse(t *testing.T) {
	dir := t.TempDir()
	write(t, dir, "a.plant", "catalogue \"a\"\nuse \"b.plant\"\n")
	write(t, dir, "b.plant", "catalogue \"b\"\nuse \"a.plant\"\n")
	p := write(t, dir, "p.plant", "plant \"x\"\nuse \"a.plant\"\nbasis {\n}\n")
	d, _ := lintJSON(t, "", p)
	for _, f := range d.Findings {
		if f.Rule == "circular-use" && strings.HasSuffix(f.File, "b.plant") {
			return
		}
	}
	t.Errorf("no circular-use in b.plant: %+v", d.Findings)
}

// A link inside the workspace must not lead out of it.
func TestLinkOutside(t *testing.T) {
	outside := t.TempDir()
	secret := write(t, outside, "secret.plant", "catalogue \"secret\"\n")
	dir := t.TempDir()
	if err := os.Symlink(secret, filepath.Join(dir, "c.plant")); err != nil {
		t.Skip("this system has no links: ", err)
	}
	p := write(t, dir, "p.plant", "plant \"x\"\nuse \"c.plant\"\nbasis {\n}\n")
	d, _ := lintJSON(t, "", p)
	for _, f := range d.Findings {
		if f.Rule == "file-missing" {
			return
		}
	}
	t.Errorf("the link was followed: %+v", d.Findings)
}

func TestStandardInput(t *testing.T) {
	d, code := lintJSON(t, "plant \"x\"\nbasis {\n  altitude 10 bar\n}\n", "-")
	if code != exitFindings || len(d.Findings) == 0 || d.Findings[0].File != stdinName || d.Findings[0].Line != 3 || d.Findings[0].Column != 12 {
		t.Errorf("exit %d, %+v", code, d.Findings)
	}
}

// Columns count code points, ends are exclusive.
func TestPositions(t *testing.T) {
	d, _ := lintJSON(t, "plant \"Größe 🔥\" # ü\nbasis {\n  altitude 10 barr # é\n}\n", "-")
	for _, f := range d.Findings {
		if f.Rule == "unknown-unit" {
			if f.Line != 3 || f.Column != 15 || f.EndLine != 3 || f.EndColumn != 19 {
				t.Errorf("%+v", f)
			}
			return
		}
	}
	t.Errorf("no finding: %+v", d.Findings)
}

// The JSON of a run has every field that readers rely on, and lists are never
// null.
func TestJSONShape(t *testing.T) {
	out, _, _ := tundish(t, "plant \"x\"\nbasis {\n}\n", "lint", "--format", "json", "-")
	for _, want := range []string{`"tool"`, `"name": "tundish"`, `"version"`, `"files": 1`, `"findings": [`, `"notEvaluated": [`} {
		if !strings.Contains(out, want) {
			t.Errorf("%s is missing in\n%s", want, out)
		}
	}
	if strings.Contains(out, "null") {
		t.Errorf("null in\n%s", out)
	}
}

func TestFormatWrite(t *testing.T) {
	dir := t.TempDir()
	p := write(t, dir, "p.plant", "plant   \"x\"\n\n\n\nbasis   {\naltitude 10   m   # high\n}\n")
	if err := os.Chmod(p, 0o600); err != nil {
		t.Fatal(err)
	}
	if _, _, code := tundish(t, "", "format", "--check", p); code != exitFindings {
		t.Errorf("--check: exit %d", code)
	}
	if _, errs, code := tundish(t, "", "format", "--write", p); code != exitClean {
		t.Errorf("--write: exit %d %s", code, errs)
	}
	got, err := os.ReadFile(p)
	if err != nil {
		t.Fatal(err)
	}
	if want := "plant \"x\"\n\nbasis {\n  altitude        10 m  # high\n}\n"; string(got) != want {
		t.Errorf("got %q, want %q", got, want)
	}
	st, err := os.Stat(p)
	if err != nil || st.Mode().Perm() != 0o600 {
		t.Errorf("the mode changed: %v %v", st.Mode(), err)
	}
	if left, _ := filepath.Glob(filepath.Join(dir, ".tundish-*")); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
}

func TestValues(t *testing.T) {
	out, _, code := tundish(t, "", "values", "--format", "json", "examples/in-line.plant")
	if code != exitClean {
		t.Fatalf("exit %d", code)
	}
	var list []report.JSONValue
	if err := json.Unmarshal([]byte(out), &list); err != nil {
		t.Fatal(err)
	}
	seen := map[string]report.JSONValue{}
	for _, v := range list {
		if _, twice := seen[v.Path]; twice {
			t.Errorf("%s stands twice", v.Path)
		}
		seen[v.Path] = v
		if v.Value != nil && (v.Formula == "" || v.Source == "" || v.Read == "" || v.Unit == "" || v.Line < 1) {
			t.Errorf("%s lacks formula, source, unit or line: %+v", v.Path, v)
		}
	}
	for _, want := range []string{"basis.load", "units.output.total", "units.output.total.one-off", "units.turndown", "U1.gas-rate.all-full", "U4.gas-pressure.all-full", "units.gas-pressure.least.all-full", "G1.pressure-loss.all-full", "G1.velocity.all-full", "gas-run.installation-volume", "gas-run.purge-volume", "gas-run.test-time", "Meter.rate.all-full", "U3.flow.all-full", "units.flow.spread.all-full", "Flow-H.velocity", "U1.pump-margin.all-full", "Head-F.pressure.all-full", "U1.flue-margin.one-low", "Head-F.dew-point", "Trap-F.seal-margin", "condensate.rate.all-full", "Neut.needed-capacity"} {
		if _, ok := seen[want]; !ok {
			t.Errorf("%s is not computed", want)
		}
	}
	// By hand: 61.8 kW net x 37.78/34.02 = 68.63 kW gross; 68.63/38.9 MJ/m3 = 1.7643 l/s.
	if v := seen["U1.gas-rate.all-full"]; v.Value == nil || *v.Value < 1.7642e-3 || *v.Value > 1.7644e-3 {
		t.Errorf("U1.gas-rate = %v", v)
	}
}

func TestNoColorInPipes(t *testing.T) {
	out, _, _ := tundish(t, "", "lint", "examples/l-shaped-faulty.plant")
	if strings.Contains(out, "\x1b[") {
		t.Error("color codes in a pipe")
	}
}

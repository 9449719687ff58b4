package main

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/tundish/check/report"
)

// A new specification of any shape can be read, is formatted, holds no error and
// no warning, and says aloud what is open.
func TestNew(t *testing.T) {
	for _, code := range []string{"UK", "EU", "US"} {
		for _, layout := range []string{"in-line", "back-to-back", "l-shaped"} {
			for n := 1; n <= 8; n++ {
				args := []string{"new", "--units", fmt.Sprint(n), "--layout", layout, "--jurisdiction", code, "--kw", "80", "--load", fmt.Sprint(75 * n)}
				text, errs, exit := tundish(t, "", args...)
				if layout != "in-line" && n == 1 {
					if exit != exitUse {
						t.Errorf("one unit %s: exit %d", layout, exit)
					}
					continue
				}
				if exit != exitClean {
					t.Fatalf("%v: exit %d: %s", args, exit, errs)
				}
				out, _, _ := tundish(t, text, "lint", "--format", "json", "-")
				var d report.Document
				if err := json.Unmarshal([]byte(out), &d); err != nil {
					t.Fatal(err)
				}
				for _, f := range d.Findings {
					if f.Severity != "note" {
						t.Errorf("%s, %s, %d units: %s at line %d: %s", code, layout, n, f.Rule, f.Line, f.Message)
					}
				}
				if len(d.NotEvaluated) < 10 {
					t.Errorf("%s, %s, %d units: only %d questions are open", code, layout, n, len(d.NotEvaluated))
				}
				if again, _, exit := tundish(t, text, "format", "-"); exit != exitClean || again != text {
					t.Errorf("%s, %s, %d units: not formatted", code, layout, n)
				}
			}
		}
	}
}

// Answers come from questions too; a wrong one, or a file that is there already,
// writes nothing.
func TestNewAsked(t *testing.T) {
	text, asked, code := tundish(t, "Larch hall\nUK\nschool\n3\n60\n\n\n", "new", "--ask")
	if code != exitClean || !strings.Contains(text, `plant "Larch hall"`) || !strings.Contains(text, "units U1..U3") || !strings.Contains(asked, "How many units") {
		t.Errorf("exit %d\n%s\n%s", code, asked, text)
	}
	if _, _, code := tundish(t, "Larch hall\n", "new", "--ask"); code != exitFailed {
		t.Errorf("answers that end too soon: exit %d", code)
	}
	for _, bad := range [][]string{{"--units", "9"}, {"--units", "x"}, {"--kw", "-1"}, {"--kw", "NaN"}, {"--title", "a\"b"}, {"--layout", "round"}, {"extra"}} {
		if out, errs, code := tundish(t, "", append([]string{"new"}, bad...)...); code != exitUse || out != "" || errs == "" {
			t.Errorf("%v: exit %d, %q", bad, code, errs)
		}
	}
	p := filepath.Join(t.TempDir(), "p.plant")
	if _, errs, code := tundish(t, "", "new", "-o", p); code != exitClean {
		t.Fatal(errs)
	}
	if err := os.WriteFile(p, []byte("mine"), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, _, code := tundish(t, "", "new", "-o", p); code != exitFailed {
		t.Errorf("over a file: exit %d", code)
	}
	if b, _ := os.ReadFile(p); string(b) != "mine" {
		t.Error("the file was overwritten")
	}
}

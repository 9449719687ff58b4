package main

import (
	"encoding/json"
	"fmt"
	"html"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"example.org/tundish/check/report/compare"
)

var (
	idAttr   = regexp.MustCompile(` id="([^"]+)"`)
	linkAttr = regexp.MustCompile(` href="([^"]+)"`)
)

// The page of every example: each value and each finding stands there once, every
// link leads somewhere on the page, and nothing is asked of the network.
func TestSheet(t *testing.T) {
	for _, name := range []string{"in-line", "back-to-back", "us-units", "l-shaped-faulty", "back-to-back-record"} {
		file := "examples/" + name + ".plant"
		page, errs, code := tundish(t, "", "sheet", file, "--today", "2026-07-01")
		if code != exitClean {
			t.Fatalf("%s: exit %d: %s", name, code, errs)
		}
		text := html.UnescapeString(page)
		ids := map[string]int{}
		for _, m := range idAttr.FindAllStringSubmatch(page, -1) {
			ids[m[1]]++
		}
		for id, n := range ids {
			if n > 1 {
				t.Errorf("%s: the id %s stands %d times", name, id, n)
			}
		}
		for _, m := range linkAttr.FindAllStringSubmatch(page, -1) {
			if target, ok := strings.CutPrefix(m[1], "#"); !ok || ids[target] == 0 && !strings.HasPrefix(target, "calc-") {
				t.Errorf("%s: the link %s leads nowhere on the page", name, m[1])
			}
		}
		if n := strings.Count(page, "<script"); n > 0 || strings.Contains(page, "url(") || strings.Contains(page, "src=") {
			t.Errorf("%s: the page asks for more than itself", name)
		}
		values := 0
		if name != "back-to-back-record" {
			out, _, _ := tundish(t, "", "values", file, "--format", "json")
			var list []struct{ Path string }
			if err := json.Unmarshal([]byte(out), &list); err != nil {
				t.Fatal(err)
			}
			for _, v := range list {
				if n := strings.Count(page, `<code class="soft">`+html.EscapeString(v.Path)+`</code></span>`); n != 1 {
					t.Errorf("%s: the value %s stands %d times", name, v.Path, n)
				}
				values++
			}
			if values < 100 {
				t.Errorf("%s: only %d values", name, values)
			}
		}
		d, _ := lintJSON(t, "", "--today", "2026-07-01", file)
		for i, f := range d.Findings {
			at := strings.Index(text, fmt.Sprintf(`id="finding-%d"`, i+1))
			if at < 0 || !strings.Contains(text[at:min(at+1500, len(text))], f.Message) {
				t.Errorf("%s: finding %d is not there: %s", name, i+1, f.Message)
			}
		}
		if n := strings.Count(page, `id="finding-`); n != len(d.Findings) {
			t.Errorf("%s: %d findings on the page, %d from lint", name, n, len(d.Findings))
		}
		for _, must := range []string{"no permission to build", "SHA-256", "Signatures", "register number"} {
			if !strings.Contains(text, must) {
				t.Errorf("%s: the page lacks %q", name, must)
			}
		}
		if name == "in-line" && strings.Count(page, "<figure") < 3 {
			t.Errorf("only %d figures", strings.Count(page, "<figure"))
		}
	}
}

// Two revisions: the statement, its values, the margin that broke and the finding
// that is new are told, in the list and on the sheet, and nothing else of inputs.
func TestCompare(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{"in-line.plant", "catalogue.plant"} {
		b, err := os.ReadFile("../../examples/" + name)
		if err != nil {
			t.Fatal(err)
		}
		write(t, dir, name, string(b))
	}
	b, err := os.ReadFile("../../examples/in-line.plant")
	if err != nil {
		t.Fatal(err)
	}
	next := write(t, dir, "next.plant", strings.Replace(string(b), "DN65 14 m", "DN32 14 m", 1))
	old := filepath.Join(dir, "in-line.plant")
	out, errs, code := tundish(t, "", "compare", old, next, "--format", "json")
	var c compare.Changes
	if err := json.Unmarshal([]byte(out), &c); err != nil || code != exitClean {
		t.Fatalf("exit %d, %v, %s", code, err, errs)
	}
	if len(c.Inputs) != 1 || c.Inputs[0].What != "changed" || !strings.Contains(c.Inputs[0].Is, "DN32") {
		t.Errorf("inputs: %+v", c.Inputs)
	}
	isNew, broke, moved := false, false, false
	for _, f := range c.Findings {
		isNew = isNew || f.What == "new" && f.Rule == "gas-drop-over-limit"
	}
	for _, m := range c.Margins {
		broke = broke || m.Broke && m.Rule == "gas-drop-over-limit"
	}
	for _, v := range c.Values {
		moved = moved || v.Path == "G1.velocity.all-full" && v.Was == "1.854 m/s"
		if strings.HasPrefix(v.Path, "Flow-H") {
			t.Errorf("the water did not change: %+v", v)
		}
	}
	if !isNew || !broke || !moved {
		t.Errorf("new %v, broke %v, moved %v: %s", isNew, broke, moved, out)
	}
	if out, _, _ := tundish(t, "", "compare", old, old); out != "Nothing changed.\n" {
		t.Errorf("the same file: %s", out)
	}
	if page, _, code := tundish(t, "", "sheet", next, "--against", old); code != exitClean || !strings.Contains(page, `id="since"`) || !strings.Contains(page, "DN32 14 m") {
		t.Errorf("the sheet against the old one: exit %d", code)
	}
	back, _, _ := tundish(t, "", "compare", next, old, "--format", "json")
	if !strings.Contains(back, `"gone"`) || !strings.Contains(back, `"mends": true`) {
		t.Errorf("the way back: %.400s", back)
	}
}

package main

import (
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"html"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"example.org/tundish/check/report/compare"
	"example.org/tundish/check/report/sheet"
	"example.org/tundish/check/tables"
)

var (
	idAttr   = regexp.MustCompile(` id="([^"]+)"`)
	linkAttr = regexp.MustCompile(` href="([^"]+)"`)
)

// sheetExamples are the files whose sheets are tested, with the figures that
// cannot be drawn of them.
var sheetExamples = []struct {
	name    string
	figures int
	lacking []string
}{
	{"in-line", 8, nil},
	{"back-to-back", 8, nil},
	{"us-units", 8, nil},
	{"l-shaped-faulty", 7, []string{"load-duration"}},
	{"back-to-back-record", 0, nil},
	{"catalogue", 0, nil},
}

// The page of every example: each value and each finding stands there once, every
// link leads somewhere on the page, and nothing is asked of the network.
func TestSheet(t *testing.T) {
	for _, x := range sheetExamples {
		t.Run(x.name, func(t *testing.T) {
			file := "examples/" + x.name + ".plant"
			page, errs, code := tundish(t, "", "sheet", file, "--today", "2026-07-01")
			if code != exitClean {
				t.Fatalf("exit %d: %s", code, errs)
			}
			ids := map[string]int{}
			for _, m := range idAttr.FindAllStringSubmatch(page, -1) {
				ids[m[1]]++
			}
			for id, n := range ids {
				if n > 1 {
					t.Errorf("the id %s stands %d times", id, n)
				}
			}
			for _, m := range linkAttr.FindAllStringSubmatch(page, -1) {
				if target, ok := strings.CutPrefix(m[1], "#"); !ok || ids[target] == 0 {
					t.Errorf("the link %s leads nowhere on the page", m[1])
				}
			}
			for _, asks := range []string{"<script", "url(", "src=", "@import", "<link"} {
				if strings.Contains(page, asks) {
					t.Errorf("the page asks for more than itself: %s", asks)
				}
			}
			sheetHoldsValues(t, file, page)
			sheetHoldsFindings(t, file, page)
			if n := strings.Count(page, "<figure"); n != x.figures {
				t.Errorf("%d figures, not %d", n, x.figures)
			}
			for _, kind := range x.lacking {
				if !strings.Contains(page, `<p id="figure-`+kind+`" class="lack">`) {
					t.Errorf("the page does not say why there is no %s", kind)
				}
			}
			b, err := os.ReadFile(filepath.Join(root, file))
			if err != nil {
				t.Fatal(err)
			}
			text := html.UnescapeString(page)
			for _, must := range []string{
				"no permission to build", "Signatures", "register number", "Cautions", "Not evaluated", "tundish " + version,
				fmt.Sprintf("%x", sha256.Sum256(b)), tables.Hash(), "judged by the date 2026-07-01",
			} {
				if !strings.Contains(text, must) {
					t.Errorf("the page lacks %q", must)
				}
			}
			for i, line := range strings.Split(strings.TrimSuffix(string(b), "\n"), "\n") {
				if want := fmt.Sprintf(`<li id="line-%d"><span>%d</span><code>%s</code></li>`, i+1, i+1, html.EscapeString(line)); !strings.Contains(text, html.UnescapeString(want)) {
					t.Errorf("line %d of the text is not there", i+1)
				}
			}
		})
	}
}

// sheetHoldsValues holds the page against what "values" prints: every path once,
// in a calculation with its result, formula, numbers put in and source.
func sheetHoldsValues(t *testing.T, file, page string) {
	t.Helper()
	out, _, code := tundish(t, "", "values", file)
	if code != exitClean {
		t.Fatalf("values: exit %d", code)
	}
	calcs := map[string]string{} // by the id of each row, the text of its calculation
	for _, c := range strings.Split(page, `<div class="calc"`)[1:] {
		c, _, _ = strings.Cut(c, "</section>")
		for _, m := range idAttr.FindAllStringSubmatch(c, -1) {
			if strings.HasPrefix(m[1], "value_") {
				if calcs[m[1]] != "" {
					t.Errorf("%s stands in two calculations", m[1])
				}
				calcs[m[1]] = html.UnescapeString(c)
			}
		}
	}
	n := 0
	for _, v := range valueLines(out) {
		n++
		c, ok := calcs[sheet.Anchor("value "+v.path)]
		if !ok {
			t.Errorf("the value %s is not there", v.path)
			continue
		}
		row := c
		if _, after, ok := strings.Cut(c, `id="`+sheet.Anchor("value "+v.path)+`"`); ok && strings.Contains(c, `class="rows"`) {
			row, _, _ = strings.Cut(after, " id=")
		}
		if !strings.Contains(row, v.result) {
			t.Errorf("%s: the row has not the result %q", v.path, v.result)
		}
		for _, must := range v.rest {
			if !strings.Contains(c, must) {
				t.Errorf("%s: the calculation does not say %q", v.path, must)
			}
		}
	}
	if n != len(calcs) {
		t.Errorf("%d rows on the page, %d values", len(calcs), n)
	}
	if strings.Contains(page, "<figure") && n < 100 {
		t.Errorf("only %d values", n)
	}
}

type valueLine struct {
	path, result string
	rest         []string // formula, numbers put in, source
}

// valueLines reads the text of "values".
func valueLines(out string) (list []valueLine) {
	for _, line := range strings.Split(strings.TrimSpace(out), "\n") {
		if line == "" {
			continue
		}
		if !strings.HasPrefix(line, " ") {
			path, result, _ := strings.Cut(line, "  ")
			result = strings.Replace(result, "not evaluated, needs ", "needs ", 1)
			if after, ok := strings.CutPrefix(result, "needs "); ok {
				result = after
			}
			list = append(list, valueLine{path: path, result: result})
			continue
		}
		v := &list[len(list)-1]
		line = strings.TrimSpace(line)
		if with, ok := strings.CutPrefix(line, "with "); ok {
			v.rest = append(v.rest, strings.Split(with, ", ")...)
			continue
		}
		v.rest = append(v.rest, line)
	}
	return list
}

// sheetHoldsFindings holds the page against what "lint" finds.
func sheetHoldsFindings(t *testing.T, file, page string) {
	t.Helper()
	d, _ := lintJSON(t, "", "--today", "2026-07-01", file)
	for i, f := range d.Findings {
		_, at, ok := strings.Cut(page, fmt.Sprintf(`id="finding-%d">`, i+1))
		at, _, _ = strings.Cut(at, "</div>")
		at = html.UnescapeString(at)
		if !ok {
			t.Errorf("finding %d is not there: %s", i+1, f.Message)
			continue
		}
		for _, must := range []string{f.Severity, f.Rule, f.Message, f.Found, f.Limit, f.Mend, fmt.Sprintf("line %d", f.Line)} {
			if !strings.Contains(at, must) {
				t.Errorf("finding %d does not say %q", i+1, must)
			}
		}
		if f.Source != "the plant language" && (f.Source == "" || !strings.Contains(at, f.Source+" ("+f.Read+")")) {
			t.Errorf("finding %d does not say its source %q (%s)", i+1, f.Source, f.Read)
		}
	}
	if n := strings.Count(page, `id="finding-`); n != len(d.Findings) {
		t.Errorf("%d findings on the page, %d from lint", n, len(d.Findings))
	}
	_, open, _ := strings.Cut(page, `<section id="open">`)
	open, _, _ = strings.Cut(open, "</section>")
	if n := strings.Count(open, "<tr><td>"); n != len(d.NotEvaluated) {
		t.Errorf("%d open questions on the page, %d from lint", n, len(d.NotEvaluated))
	}
}

// Every kind of drawing has its place on the sheet.
func TestSheetHasEveryDrawing(t *testing.T) {
	on := map[string]bool{}
	for _, f := range figureTitles {
		on[f.kind] = true
		if drawings[f.kind] == nil {
			t.Errorf("the sheet shows %s, which nothing draws", f.kind)
		}
	}
	for _, kind := range drawingKinds() {
		if !on[kind] {
			t.Errorf("%s is not on the sheet", kind)
		}
	}
}

// Who asks for a PDF is told the way to it.
func TestSheetAsPDF(t *testing.T) {
	if _, errs, code := tundish(t, "", "sheet", "examples/in-line.plant", "--format", "pdf"); code != exitUse || !strings.Contains(errs, "print it") {
		t.Errorf("exit %d: %s", code, errs)
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

// An accepted exception stands on the sheet with who accepted what until when; its
// finding is no longer among those that count. Nothing in the text of a plant
// becomes markup.
func TestSheetDeviationAndHostileText(t *testing.T) {
	dir := t.TempDir()
	b, err := os.ReadFile(filepath.Join(root, "examples", "catalogue.plant"))
	if err != nil {
		t.Fatal(err)
	}
	write(t, dir, "catalogue.plant", string(b))
	b, err = os.ReadFile(filepath.Join(root, "examples", "l-shaped-faulty.plant"))
	if err != nil {
		t.Fatal(err)
	}
	const hostile = "Works </style><script>alert(1)</script> & \\ ; } x"
	text := strings.Replace(string(b), "Tanner's wharf, workshop heating", hostile, 1)
	text += "\ndeviation header-too-fast on Flow-H because \"no room for <b>DN150</b>\" by D1 until 2026-12-31\n"
	file := write(t, dir, "p.plant", text)
	page, errs, code := tundish(t, "", "sheet", file, "--today", "2026-07-01")
	if code != exitClean {
		t.Fatalf("exit %d: %s", code, errs)
	}
	if strings.Contains(page, "<script") || strings.Count(page, "</style") != 1 || strings.Contains(page, "<b>DN150") {
		t.Error("a text of the plant became markup")
	}
	if want := "<h1>" + html.EscapeString(hostile) + "</h1>"; !strings.Contains(page, want) {
		t.Errorf("the title is not %s", want)
	}
	_, excused, ok := strings.Cut(page, "Accepted by deviation</h3>")
	excused, _, _ = strings.Cut(excused, "</section>")
	excused = html.UnescapeString(excused)
	for _, must := range []string{"header-too-fast on Flow-H: no room for <b>DN150</b>", "D1", "2026-12-31", "Water runs through Flow-H at"} {
		if !ok || !strings.Contains(excused, must) {
			t.Errorf("the deviation does not say %q: %s", must, excused)
		}
	}
	found, _, _ := strings.Cut(page, "Accepted by deviation</h3>")
	if strings.Contains(found, "Water runs through Flow-H at") {
		t.Error("the accepted finding still counts")
	}
	sheetHoldsFindings(t, file, page)
}

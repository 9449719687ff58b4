package rules

import (
	"errors"
	"fmt"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"golang.org/x/tools/txtar"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
	cases "example.org/tundish/testdata/rules"
)

// The test of a rule is testdata/rules/<id>.txtar. Its sections are plants:
// one whose name starts with "fires" must give the rule, one that starts with
// "silent" or "unknown" must not, one that starts with "edge" stands where the
// decision turns and says by its marks what comes of it: the value at its limit
// or just beyond, one member of a group that lacks the part, the word none or
// unknown, a statement that cannot be read. Each rule has all of fires, silent
// and edge. A comment "# expect ID `regexp`" on a line
// marks a finding that starts on it; "# needs ID `regexp`" marks a rule that
// could not decide. The regexp is held against part, message, found, limit, mend,
// severity, what is related and the titles of the fixes, with " | " between them.
// Findings of the file's own rule, and what it says it could not decide, are
// compared one to one with the marks; those of other rules only where a mark names
// them. Problems of the text fail the test unless they are marked. Other sections are files to
// "use"; common ones lie in testdata/rules/common. A section "X.fixed" is the
// text of X after the first fix of each finding of the rule, which must then be
// silent. A section "unknown-undated..." is judged without a date of today.

const rulesDir = "../../testdata/rules"

// testToday is the date by which rules about dates are tested.
var testToday = cases.Today

func TestEveryRuleHasItsPage(t *testing.T) {
	idForm := regexp.MustCompile(`^[a-z][a-z0-9]*(-[a-z0-9]+)+$`)
	seen := map[string]bool{}
	for _, r := range All() {
		if seen[r.ID] {
			t.Errorf("%s: two rules have this id", r.ID)
		}
		seen[r.ID] = true
		if !idForm.MatchString(r.ID) {
			t.Errorf("%s: the id is not kebab-case words", r.ID)
		}
		for name, text := range map[string]string{"Summary": r.Summary, "Why": r.Why, "Mend": r.Mend, "Since": r.Since, "Group": string(r.Group)} {
			if text == "" {
				t.Errorf("%s: %s is empty", r.ID, name)
			}
		}
		if len(r.Sources) == 0 {
			t.Errorf("%s: no source", r.ID)
		}
		for _, s := range r.Sources {
			if s.Work == "" || s.Read == "" {
				t.Errorf("%s: a source without work or how read", r.ID)
			}
		}
		if r.Run == nil {
			t.Errorf("%s: no Run", r.ID)
		}
		if _, err := os.Stat(filepath.Join(rulesDir, r.ID+".txtar")); err != nil {
			t.Errorf("%s: no test file testdata/rules/%s.txtar", r.ID, r.ID)
		}
	}
}

func TestRules(t *testing.T) {
	files, err := filepath.Glob(filepath.Join(rulesDir, "*.txtar"))
	if err != nil || len(files) == 0 {
		t.Fatalf("no rule tests found: %v", err)
	}
	cache := lang.NewCache()
	for _, file := range files {
		id := strings.TrimSuffix(filepath.Base(file), ".txtar")
		t.Run(id, func(t *testing.T) {
			ar, err := txtar.ParseFile(file)
			if err != nil {
				t.Fatal(err)
			}
			if Find(id) == nil {
				t.Fatalf("there is no rule %s", id)
			}
			if len(strings.TrimSpace(string(ar.Comment))) == 0 {
				t.Error("the comment on top must say what is tried and where the numbers come from")
			}
			testRuleFile(t, cache, id, ar)
		})
	}
}

func testRuleFile(t *testing.T, cache *lang.Cache, id string, ar *txtar.Archive) {
	texts := map[string]string{}
	for _, f := range ar.Files {
		texts[f.Name] = string(f.Data)
	}
	fires, silent, edges := 0, 0, 0
	for _, f := range ar.Files {
		name := strings.TrimSuffix(f.Name, ".plant")
		switch {
		case strings.HasSuffix(f.Name, ".fixed"):
			testFixed(t, cache, id, texts, f.Name)
			continue
		case strings.HasPrefix(name, "fires"):
			fires++
		case strings.HasPrefix(name, "silent"):
			silent++
		case strings.HasPrefix(name, "edge"):
			edges++
		case strings.HasPrefix(name, "unknown"):
		default:
			continue // a file to use
		}
		rep := checkText(cache, texts, f.Name, texts[f.Name])
		n := compareMarks(t, id, f.Name, texts[f.Name], rep)
		if strings.HasPrefix(name, "fires") && n == 0 {
			t.Errorf("%s: the rule does not fire", f.Name)
		}
		if (strings.HasPrefix(name, "silent") || strings.HasPrefix(name, "unknown")) && n > 0 {
			t.Errorf("%s: the rule fires %d times", f.Name, n)
		}
	}
	if fires == 0 || silent == 0 || edges == 0 {
		t.Errorf("a rule needs a section that fires, one that is silent and one at the edge; there are %d, %d and %d", fires, silent, edges)
	}
}

func checkText(cache *lang.Cache, texts map[string]string, name, text string) *check.Report {
	p := plant.Resolve(bindText(cache, name, text), loader(cache, texts))
	today := testToday
	if strings.HasPrefix(name, "unknown-undated") {
		today = lang.Date{}
	}
	return check.Run(check.Input{Plant: p, Rules: All(), Today: today})
}

// loader finds the files that a section uses among its neighbors, else among the
// common ones.
func loader(cache *lang.Cache, texts map[string]string) plant.Loader {
	return func(p string) (*lang.File, error) {
		got, ok := texts[p]
		if !ok {
			b, err := os.ReadFile(filepath.Join(rulesDir, "common", path.Base(p)))
			if err != nil {
				return nil, errors.New("no such file")
			}
			got = string(b)
		}
		return bindText(cache, p, got), nil
	}
}

func bindText(cache *lang.Cache, name, text string) *lang.File {
	f := lang.Parse(lang.NewSource(name, text), cache)
	lang.Bind(f, lang.Language())
	return f
}

var (
	markForm  = regexp.MustCompile("# (expect|needs) (.*)$")
	markEntry = regexp.MustCompile("^([a-z][a-z0-9-]*) `([^`]*)`\\s*,?\\s*")
)

type mark struct {
	line int
	kind string
	rule string
	re   *regexp.Regexp
	hit  bool
}

func marksOf(t *testing.T, name, text string) []*mark {
	t.Helper()
	var out []*mark
	for i, line := range strings.Split(text, "\n") {
		m := markForm.FindStringSubmatch(line)
		if m == nil {
			continue
		}
		kind, rest := m[1], strings.TrimSpace(m[2])
		for rest != "" {
			if other := markForm.FindStringSubmatch(rest); other != nil && strings.HasPrefix(rest, "# ") {
				kind, rest = other[1], strings.TrimSpace(other[2]) // a line may hold marks of both kinds
			}
			e := markEntry.FindStringSubmatch(rest)
			if e == nil {
				t.Fatalf("%s:%d: the mark %q is not ID `regexp`", name, i+1, rest)
			}
			re, err := regexp.Compile(e[2])
			if err != nil {
				t.Fatalf("%s:%d: %v", name, i+1, err)
			}
			out = append(out, &mark{line: i + 1, kind: kind, rule: e[1], re: re})
			rest = strings.TrimSpace(rest[len(e[0]):])
		}
	}
	return out
}

// compareMarks compares and returns how often the rule fired.
func compareMarks(t *testing.T, id, name, text string, rep *check.Report) int {
	t.Helper()
	marks := marksOf(t, name, text)
	named := map[string]bool{id: true}
	for _, m := range marks {
		named[m.rule] = true
	}
	problems := map[string]bool{}
	for _, k := range lang.ProblemKinds {
		problems[k.ID] = true
	}
	fired := 0
	for i := range rep.Findings {
		f := &rep.Findings[i]
		if f.Rule == id {
			fired++
		}
		if !named[f.Rule] && !problems[f.Rule] && f.Rule != "internal-fault" {
			continue
		}
		line := 1
		if f.File == nil || f.File == rep.Plant.File {
			line, _ = rep.Plant.File.Source.Position(f.Span.Start)
		}
		said := strings.Join([]string{f.Part, f.Message, f.Found, f.Limit, f.Mend, f.Severity.String()}, " | ")
		for _, r := range f.Related {
			said += " | " + r.Message
		}
		for i := range f.Fixes {
			said += " | " + f.Fixes[i].Title
		}
		if !take(marks, "expect", line, f.Rule, said) {
			t.Errorf("%s:%d: not expected: %s %s: %s", name, line, f.Severity, f.Rule, said)
		}
	}
	for i := range rep.Unknowns {
		u := &rep.Unknowns[i]
		line, _ := u.File.Source.Position(u.Span.Start)
		if !take(marks, "needs", line, u.Rule, u.Needs) && u.Rule == id {
			t.Errorf("%s:%d: not expected: %s not evaluated, needs %s", name, line, u.Rule, u.Needs)
		}
	}
	for _, m := range marks {
		if !m.hit {
			t.Errorf("%s:%d: expected but not there: %s %s `%s`%s", name, m.line, m.kind, m.rule, m.re, heard(rep, m.rule))
		}
	}
	return fired
}

// heard lists what the rule did say, for the reader of a failed test.
func heard(rep *check.Report, rule string) string {
	var b strings.Builder
	for i := range rep.Unknowns {
		if u := &rep.Unknowns[i]; u.Rule == rule {
			line, _ := u.File.Source.Position(u.Span.Start)
			fmt.Fprintf(&b, "\n\tline %d needs %s", line, u.Needs)
		}
	}
	return b.String()
}

func take(marks []*mark, kind string, line int, rule, said string) bool {
	for _, m := range marks {
		if !m.hit && m.kind == kind && m.line == line && m.rule == rule && m.re.MatchString(said) {
			m.hit = true
			return true
		}
	}
	return false
}

func testFixed(t *testing.T, cache *lang.Cache, id string, texts map[string]string, name string) {
	t.Helper()
	base := strings.TrimSuffix(name, ".fixed")
	before, ok := texts[base]
	if !ok {
		t.Errorf("%s: there is no section %s", name, base)
		return
	}
	var edits []lang.Edit
	rep := checkText(cache, texts, base, before)
	for i := range rep.Findings {
		if f := &rep.Findings[i]; f.Rule == id && len(f.Fixes) > 0 {
			edits = append(edits, f.Fixes[0].Edits...)
		}
	}
	got := lang.Apply(before, edits)
	if want := texts[name]; got != want {
		t.Errorf("%s: after the fixes the text is\n%s\nwant\n%s", name, got, want)
		return
	}
	after := checkText(cache, texts, base, got)
	for i := range after.Findings {
		if f := &after.Findings[i]; f.Rule == id {
			t.Errorf("%s: still fires: %s", name, f.Message)
		}
	}
}

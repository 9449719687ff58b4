package reference_test

import (
	"bytes"
	"errors"
	"html"
	"regexp"
	"sort"
	"strings"
	"testing"

	"example.org/tundish/check/report/reference"
	"example.org/tundish/check/rules"
	"example.org/tundish/lang"
)

var (
	idAttr   = regexp.MustCompile(` id="([^"]+)"`)
	linkAttr = regexp.MustCompile(` href="([^"]+)"`)
)

// onePage checks that ids are unique, that every link leads to one of them, and
// that nothing is asked of the network.
func onePage(t *testing.T, page string) map[string]bool {
	t.Helper()
	ids := map[string]bool{}
	for _, m := range idAttr.FindAllStringSubmatch(page, -1) {
		if ids[m[1]] {
			t.Errorf("the id %s stands twice", m[1])
		}
		ids[m[1]] = true
	}
	for _, m := range linkAttr.FindAllStringSubmatch(page, -1) {
		if target, ok := strings.CutPrefix(m[1], "#"); !ok || !ids[target] {
			t.Errorf("the link %s leads nowhere on the page", m[1])
		}
	}
	for _, asks := range []string{"<script", "url(", "src=", "@import", "<link"} {
		if strings.Contains(page, asks) {
			t.Errorf("the page asks for more than itself: %s", asks)
		}
	}
	return ids
}

// Every rule and every fault of the text stands on the page under its id; every
// rule with an example in which it speaks, and does no more after the mend.
func TestRulesPage(t *testing.T) {
	list := reference.Rules(rules.All())
	if len(list) != len(rules.All())+len(lang.ProblemKinds) {
		t.Errorf("%d entries for %d rules and %d faults of the text", len(list), len(rules.All()), len(lang.ProblemKinds))
	}
	var b bytes.Buffer
	if err := reference.WriteRulesHTML(&b, list, rules.All(), "1.2.3"); err != nil {
		t.Fatal(err)
	}
	page := b.String()
	ids := onePage(t, page)
	plain := html.UnescapeString(page)
	for _, r := range list {
		if !ids[r.ID] {
			t.Errorf("%s is not on the page", r.ID)
			continue
		}
		_, at, _ := strings.Cut(page, `<article id="`+r.ID+`">`)
		at, _, _ = strings.Cut(at, "</article>")
		at = html.UnescapeString(at)
		for _, must := range append([]string{r.Summary, r.Why, r.Mend}, r.Limits) {
			if !strings.Contains(at, must) {
				t.Errorf("%s: the page does not say %q", r.ID, must)
			}
		}
	}
	for _, r := range rules.All() {
		x, err := find(list, r.ID).Example(rules.All())
		if err != nil {
			t.Errorf("%v", err)
			continue
		}
		if x.Left != 0 {
			t.Errorf("%s: speaks %d times after the mend", r.ID, x.Left)
		}
		changed := false
		for _, l := range x.Lines {
			changed = changed || l.Sign == "-" || l.Sign == "+"
			if strings.Contains(l.Text, "# expect ") || strings.Contains(l.Text, "# needs ") {
				t.Errorf("%s: shows a mark of its test: %s", r.ID, l.Text)
			}
		}
		if !changed || len(x.Lines) > 40 || x.About == "" {
			t.Errorf("%s: %d lines, changed %v, about %q", r.ID, len(x.Lines), changed, x.About)
		}
		for _, f := range x.Findings {
			if !strings.Contains(plain, f.Message) {
				t.Errorf("%s: the page does not tell the finding %q", r.ID, f.Message)
			}
		}
	}
}

func find(list []reference.Rule, id string) *reference.Rule {
	for i := range list {
		if list[i].ID == id {
			return &list[i]
		}
	}
	return nil
}

// Every fault of the text that a text can show has an example that shows it and
// goes with the mend; the others are those of archives, sizes and of the tool.
func TestFaultsOfText(t *testing.T) {
	without := "archive-broken archive-too-large block-too-deep circular-use file-too-large internal-fault member-outside not-a-plant not-finished not-text too-many-statements use-outside use-too-deep"
	var lacks []string
	for _, k := range lang.ProblemKinds {
		x, err := find(reference.Rules(nil), k.ID).Example(nil)
		switch {
		case errors.Is(err, reference.ErrNoExample):
			lacks = append(lacks, k.ID)
		case err != nil:
			t.Error(err)
		case x.Left != 0 || len(x.Findings) != 1:
			t.Errorf("%s: %d findings, %d after the mend", k.ID, len(x.Findings), x.Left)
		}
	}
	sort.Strings(lacks)
	if got := strings.Join(lacks, " "); got != without {
		t.Errorf("without an example: %s", got)
	}
}

// A known example, held against what its test file says of it by hand.
func TestExampleOfGasDrop(t *testing.T) {
	x, err := find(reference.Rules(rules.All()), "gas-drop-over-limit").Example(rules.All())
	if err != nil {
		t.Fatal(err)
	}
	var lines []string
	for _, l := range x.Lines {
		if l.Sign != " " && l.Sign != "~" {
			lines = append(lines, l.Sign+strings.Join(strings.Fields(l.Text)[:4], " "))
		}
	}
	if got := strings.Join(lines, "; "); got != "-pipe G1 steel DN50; +pipe G1 steel DN65" || !x.ByTool {
		t.Errorf("changed lines %s, by the tool %v", got, x.ByTool)
	}
	if len(x.Findings) != 1 || !strings.HasPrefix(x.Findings[0].Text, "pipe G1") || x.Findings[0].Limit != "at most 1 mbar" && !strings.Contains(x.Findings[0].Limit, "1 mbar") {
		t.Errorf("findings: %+v", x.Findings)
	}
}

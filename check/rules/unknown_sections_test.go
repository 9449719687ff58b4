package rules

import (
	"path/filepath"
	"strings"
	"testing"

	"golang.org/x/tools/txtar"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// firesOnUnknown are the rules that fire on what is unknown, and why.
var firesOnUnknown = map[string]string{
	"drain-too-small":         "the units whose input is known make too much for the drain by themselves",
	"flue-speed-high":         "the flow of products comes from the heat input where it is not known",
	"handover-basics-missing": recordOpen,
	"handover-incomplete":     recordOpen,
	"log-incomplete":          recordOpen,
	"reading-drifts":          "CO is compared by itself where its ratio to CO2 is not known",
	"reading-incomplete":      recordOpen,
	"reading-missing":         recordOpen,
	"requirement-not-met":     "a value of a unit that no known connector leads from is not among those computed",
	"safety-chain-unproved":   recordOpen,
	"test-missing":            recordOpen,
	"test-not-passed":         recordOpen,
	"wrong-terminal":          "of two wires at one terminal the other is judged by itself",
	"yearly-check-overdue":    recordOpen,
}

// A record tells what was done: what it calls unknown it does not tell.
const recordOpen = "a record that does not say that something was done or read is no proof of it"

// TestUnknownFiresNothing puts the word unknown in place of each value, and of all
// values of each statement, of every section in which a rule is silent: what is
// unknown is no fault, so the rule stays silent.
func TestUnknownFiresNothing(t *testing.T) {
	files, err := filepath.Glob(filepath.Join(rulesDir, "*.txtar"))
	if err != nil || len(files) == 0 {
		t.Fatalf("no rule tests found: %v", err)
	}
	cache := lang.NewCache()
	for _, file := range files {
		id := strings.TrimSuffix(filepath.Base(file), ".txtar")
		if firesOnUnknown[id] != "" {
			continue
		}
		t.Run(id, func(t *testing.T) {
			t.Parallel()
			ar, err := txtar.ParseFile(file)
			if err != nil {
				t.Fatal(err)
			}
			texts := map[string]string{}
			for _, f := range ar.Files {
				texts[f.Name] = string(f.Data)
			}
			for _, f := range ar.Files {
				if strings.HasSuffix(f.Name, ".plant") && !strings.HasPrefix(f.Name, "fires") {
					openEach(t, cache, id, f.Name, texts)
				}
			}
		})
	}
}

// openEach opens the values of a section one by one.
func openEach(t *testing.T, cache *lang.Cache, id, name string, texts map[string]string) {
	t.Helper()
	text := texts[name]
	said := func(text string) string {
		p := plant.Resolve(bindText(cache, name, text), loader(cache, texts))
		rep := check.Run(check.Input{Plant: p, Rules: []*check.Rule{Find(id)}, Today: testToday})
		for i := range rep.Findings {
			if rep.Findings[i].Rule == id {
				return rep.Findings[i].Message
			}
		}
		return ""
	}
	if said(text) != "" {
		return
	}
	var walk func(list []*lang.Statement)
	walk = func(list []*lang.Statement) {
		for _, st := range list {
			walk(st.Block)
			if st.Bound == nil {
				continue
			}
			try := func(s lang.Span, open string) {
				if msg := said(text[:s.Start] + open + text[s.End:]); msg != "" {
					t.Errorf("%s: with %q in place of %q in %q: %s", name, open, text[s.Start:s.End], text[st.HeadSpan().Start:st.HeadSpan().End], msg)
				}
			}
			if len(st.Block) == 0 && len(st.Bound.Fields) > 0 {
				try(st.HeadSpan(), opened(st))
			}
			for i := range st.Bound.Fields {
				if v := st.Bound.Fields[i].Values; len(v) > 0 {
					try(st.Abs(lang.Span{Start: v[0].Expr.Span.Start, End: v[len(v)-1].Expr.Span.End}), "unknown")
				}
			}
		}
	}
	walk(bindText(cache, name, text).Statements)
}

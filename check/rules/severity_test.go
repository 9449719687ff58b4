package rules

import (
	"path/filepath"
	"strings"
	"testing"

	"golang.org/x/tools/txtar"

	"example.org/tundish/lang"
)

// TestNumbersFromMemoryWarn: a number that nobody read in print does not stop a
// plant. Physics does, and what a device must do.
func TestNumbersFromMemoryWarn(t *testing.T) {
	physics := map[string]string{
		"pump-too-weak":       "curve and losses are the maker's and the pipe's own",
		"spare-not-capped":    "an end is open or it is not",
		"trap-seal-too-small": "less water than the fan can push, before anything is kept back",
	}
	files, err := filepath.Glob(filepath.Join(rulesDir, "*.txtar"))
	if err != nil || len(files) == 0 {
		t.Fatalf("no rule tests found: %v", err)
	}
	cache := lang.NewCache()
	seen := map[string]bool{}
	for _, file := range files {
		ar, err := txtar.ParseFile(file)
		if err != nil {
			t.Fatal(err)
		}
		texts := map[string]string{}
		for _, f := range ar.Files {
			texts[f.Name] = string(f.Data)
		}
		for _, f := range ar.Files {
			if !strings.HasSuffix(f.Name, ".plant") {
				continue
			}
			rep := checkText(cache, texts, f.Name, texts[f.Name])
			for i := range rep.Findings {
				g := &rep.Findings[i]
				if g.Severity != lang.Error || g.Source.Firm() || !strings.ContainsAny(g.Limit, "0123456789") {
					continue
				}
				seen[g.Rule] = true
				if physics[g.Rule] == "" {
					t.Errorf("%s %s: %s is an error against %q (%s)", filepath.Base(file), f.Name, g.Rule, g.Limit, g.Source)
				}
			}
		}
	}
	for id := range physics {
		if !seen[id] {
			t.Errorf("the reason for %s is not needed", id)
		}
	}
}

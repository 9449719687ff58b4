package rules

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
	"example.org/tundish/testdata/plants"
)

// everything writes out all that a report says.
func everything(rep *check.Report) string {
	var b strings.Builder
	for i := range rep.Findings {
		f := &rep.Findings[i]
		fmt.Fprintf(&b, "%s %s %v %s %s %s %s %s %v %v\n", f.Rule, f.Severity, f.Span, f.Part, f.Message, f.Found, f.Limit, f.Mend, f.Fixes, f.Related)
	}
	for i := range rep.Unknowns {
		u := &rep.Unknowns[i]
		fmt.Fprintf(&b, "%s %v %s %s\n", u.Rule, u.Span, u.Part, u.Needs)
	}
	for i := range rep.Comparisons {
		c := &rep.Comparisons[i]
		fmt.Fprintf(&b, "%s %s %g %v\n", c.Rule, c.Quantity.Path(), c.Limit.Num, c.Holds)
	}
	for i := range rep.Results.All() {
		q := &rep.Results.All()[i]
		fmt.Fprintf(&b, "%s %g %s %v\n", q.Path(), q.Num, q.Missing, q.Inputs)
	}
	for _, part := range rep.Plant.All {
		fmt.Fprintf(&b, "%s %s %d\n", part.Address(), part.Kind, len(part.Subjects()))
	}
	return b.String()
}

// TestReleaseChangesNothing: plants that are judged in memory which others gave
// back say what they say in memory of their own; on several goroutines at once,
// sound, faulty and broken texts and records among them.
func TestReleaseChangesNothing(t *testing.T) {
	p := newRandomPlants(t)
	var texts []string
	for seed := range uint64(40) {
		r := rand.New(rand.NewPCG(seed, 9))
		for _, text := range []string{plants.Short(r), plants.Sound(r)} {
			broken, _ := plants.Seeded(r, text)
			texts = append(texts, text, broken, text[:r.IntN(len(text))])
		}
	}
	files := map[string]*lang.File{}
	paths, err := filepath.Glob("../../examples/*.plant")
	if err != nil || len(paths) < 5 {
		t.Fatal(paths, err)
	}
	for _, path := range paths {
		raw, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		texts = append(texts, string(raw))
		files[filepath.Base(path)] = parsed(filepath.Base(path), string(raw), nil)
	}
	load := func(name string) (*lang.File, error) {
		if f := files[filepath.Base(name)]; f != nil {
			return f, nil
		}
		return p.load(name)
	}
	judge := func(text string) *check.Report {
		f := parsed("random.plant", text, p.cache)
		return check.Run(check.Input{Plant: plant.Resolve(f, load), Rules: All(), Today: lang.Date{Year: 2026, Month: 2, Day: 1}})
	}
	want := make([]string, len(texts))
	for i, text := range texts {
		want[i] = everything(judge(text))
	}
	solve.Forget()
	var wg sync.WaitGroup
	for worker := range 4 {
		wg.Add(1)
		go func() {
			defer wg.Done()
			order := rand.New(rand.NewPCG(uint64(worker), 4)).Perm(len(texts))
			for _, i := range order {
				rep := judge(texts[i])
				got := everything(rep)
				rep.Release()
				if got != want[i] {
					t.Errorf("text %d: %s", i, firstChange(got, want[i]))
					return
				}
			}
		}()
	}
	wg.Wait()
}

func firstChange(got, want string) string {
	g, w := strings.Split(got, "\n"), strings.Split(want, "\n")
	for i := range g {
		if i >= len(w) || g[i] != w[i] {
			return fmt.Sprintf("got %q, want %q", g[i], w[min(i, len(w)-1)])
		}
	}
	return "an end is missing"
}

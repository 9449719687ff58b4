package rules

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"golang.org/x/tools/txtar"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/tables"
	"example.org/tundish/lang"
)

// wholeSteps are the limits that no plant can lie within a tenth of: each is moved
// to the neighbors given here, in the unit of its table.
var wholeSteps = map[string][2]float64{
	"uneven-units-most": {0, 2},
	"tightness-1b-size": {28, 42},     // copper beside 35 mm
	"tightness-1a-size": {125, 203.2}, // DN125, and 8 in beside DN150
}

// heldElsewhere are the limits that no rule asks for, but the list of parts and the
// order of building; here stand the tests that hold them.
var heldElsewhere = map[string][]struct{ file, test string }{
	"flanged-above": {
		{"../parts/limits_test.go", "TestFlangedFrom"},
		{"../steps/lift_test.go", "TestFlangedHeadersAreLiftedInPieces"},
	},
	"flue-piece-most": {{"../parts/limits_test.go", "TestFluePieces"}},
}

// TestEdgesHoldLimits moves each limit of the tables by a tenth, down and up: some
// section of each rule that names it must then be told otherwise. A limit that can be
// moved so far unseen has no edge case.
func TestEdgesHoldLimits(t *testing.T) {
	for _, id := range slices.Concat(slices.Collect(maps.Keys(wholeSteps)), slices.Collect(maps.Keys(heldElsewhere))) {
		if tables.LimitOf(id) == nil {
			t.Errorf("there is no limit %s any more", id)
		}
	}
	cache, naming := lang.NewCache(), rulesByLimit(t)
	sections := map[string][]*plant.Plant{} // of each rule
	for _, limit := range slices.Sorted(tables.LimitIDs()) {
		rules, held := naming[limit], heldElsewhere[limit]
		for _, h := range held {
			if b, err := os.ReadFile(h.file); err != nil || !strings.Contains(string(b), "func "+h.test+"(") {
				t.Errorf("limit %s: there is no test %s in %s (%v)", limit, h.test, h.file, err)
			}
		}
		switch {
		case len(held) > 0 && len(rules) > 0:
			t.Errorf("limit %s: %s names it, so it needs an edge there and no place in heldElsewhere", limit, rules[0].ID)
		case len(held) > 0:
			continue
		case len(rules) == 0:
			t.Errorf("limit %s: no rule names it; remove it, or tell in heldElsewhere which test holds it", limit)
			continue
		}
		for _, r := range rules {
			if sections[r.ID] == nil {
				sections[r.ID] = sectionsOf(t, cache, r.ID)
			}
			for _, to := range moved(limit) {
				if !slices.ContainsFunc(sections[r.ID], func(p *plant.Plant) bool {
					return said(p, r, nil) != said(p, r, map[string]check.Limit{limit: to})
				}) {
					t.Errorf("limit %s could be %s instead of %s and no section of %s.txtar would see it: add an edge just inside or outside of the limit", limit, to.Text(), tables.LimitOf(limit).Text(), r.ID)
				}
			}
		}
	}
}

// moved gives a limit a tenth lower and a tenth higher, or at its neighboring steps.
func moved(limit string) (out [2]check.Limit) {
	for i, by := range [...]float64{0.9, 1.1} {
		out[i] = *tables.LimitOf(limit)
		out[i].Num *= by
		if to, ok := wholeSteps[limit]; ok {
			u, _ := lang.LookupUnit(out[i].Unit)
			out[i].Num = lang.ToSI(to[i], u)
		}
	}
	return out
}

// rulesByLimit lists for each limit the rules in whose file it stands.
func rulesByLimit(t *testing.T) map[string][]*check.Rule {
	t.Helper()
	out := map[string][]*check.Rule{}
	for _, r := range All() {
		b, err := os.ReadFile(strings.ReplaceAll(r.ID, "-", "_") + ".go")
		if err != nil {
			t.Fatal(err)
		}
		for limit := range tables.LimitIDs() {
			if strings.Contains(string(b), strconv.Quote(limit)) {
				out[limit] = append(out[limit], r)
			}
		}
	}
	return out
}

// sectionsOf resolves the sections of a rule's file.
func sectionsOf(t *testing.T, cache *lang.Cache, id string) (out []*plant.Plant) {
	t.Helper()
	ar, err := txtar.ParseFile(filepath.Join(rulesDir, id+".txtar"))
	if err != nil {
		t.Fatal(err)
	}
	texts := map[string]string{}
	for _, f := range ar.Files {
		texts[f.Name] = string(f.Data)
	}
	for _, f := range ar.Files {
		if isSection(f.Name) {
			out = append(out, plant.Resolve(bindText(cache, f.Name, texts[f.Name]), loader(cache, texts)))
		}
	}
	return out
}

// isSection tells a plant that the rule test judges from a file that others use.
func isSection(name string) bool {
	return strings.HasSuffix(name, ".plant") && slices.ContainsFunc([]string{"fires", "silent", "edge", "unknown"}, func(kind string) bool {
		return strings.HasPrefix(name, kind)
	})
}

// said is what a rule makes of a plant: where it finds a fault, and what it cannot
// decide. The words of a finding do not count, for they name the limit.
func said(p *plant.Plant, r *check.Rule, over map[string]check.Limit) string {
	rep := check.Run(check.Input{Plant: p, Rules: []*check.Rule{r}, Today: testToday, Overrides: over})
	var b strings.Builder
	for i := range rep.Findings {
		f := &rep.Findings[i]
		fmt.Fprintln(&b, f.Severity, f.Part, f.Span)
	}
	for i := range rep.Unknowns {
		fmt.Fprintln(&b, rep.Unknowns[i].Part, rep.Unknowns[i].Needs)
	}
	return b.String()
}

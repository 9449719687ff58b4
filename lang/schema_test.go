package lang

import (
	"strings"
	"testing"
)

// TestSchemaLaws holds the table to its own laws: words of one statement do not
// mean two things, and no word is spelt like a unit.
func TestSchemaLaws(t *testing.T) {
	s := Language()
	fileKinds := map[string]bool{"plant": true, "catalogue": true, "record": true, "project": true}
	opened := map[string]bool{}
	kinds := map[string]bool{"basis": true}
	for i := range s.Rows {
		r := &s.Rows[i]
		if r.Block != NoBlock {
			opened[r.BlockName()] = true
		}
		kinds[r.PartKind()], kinds[r.Keyword] = true, true
	}
	for i := range s.Rows {
		r := &s.Rows[i]
		name := strings.Join(r.In, ",") + " " + r.Keyword
		for _, in := range r.In {
			if !fileKinds[in] && !opened[in] {
				t.Errorf("%s: no statement opens the block %s", name, in)
			}
		}
		if r.Help == "" || r.Example == "" {
			t.Errorf("%s: lacks help or example", name)
		}
		if r.Stage < 0 || r.Stage > 17 {
			t.Errorf("%s: stage %d", name, r.Stage)
		}
		words := map[string]string{}
		use := func(w, as string) {
			if w == "" {
				return
			}
			if before, twice := words[w]; twice && !(before == "label" && as == "label") {
				t.Errorf("%s: the word %s is %s and %s", name, w, before, as)
			}
			words[w] = as
			if _, isUnit := LookupUnit(w); isUnit {
				t.Errorf("%s: the word %s is spelt like a unit", name, w)
			}
		}
		if _, isUnit := LookupUnit(r.Keyword); isUnit {
			t.Errorf("%s: the keyword is spelt like a unit", name)
		}
		names := map[string]bool{}
		for j, sl := range r.Slots {
			if sl.Name == "" || sl.Help == "" {
				t.Errorf("%s: slot %d lacks name or help", name, j)
			}
			if names[sl.Name] {
				t.Errorf("%s: two slots are named %s", name, sl.Name)
			}
			names[sl.Name] = true
			use(sl.Label, "label")
			use(sl.Suffix, "suffix")
			if sl.Type == FlagType {
				use(sl.Name, "flag")
			}
			for _, c := range sl.Choices {
				if sl.Type == ChoiceType && sl.Label == "" {
					use(c, "choice")
				}
			}
			for _, k := range sl.Refers {
				if !kinds[k] {
					t.Errorf("%s: slot %s refers to the unknown kind %s", name, sl.Name, k)
				}
			}
			if sl.Default != "" {
				if sl.DefaultFrom == "" {
					t.Errorf("%s: the default of %s has no source", name, sl.Name)
				}
				if _, _, _, _, err := ParseQuantity(sl.Default); sl.Type == QuantityType && err != nil {
					t.Errorf("%s: the default of %s: %v", name, sl.Name, err)
				}
			}
		}
	}
}

// TestSchemaExamples binds the example of every row, at its place.
func TestSchemaExamples(t *testing.T) {
	s := Language()
	for i := range s.Rows {
		r := &s.Rows[i]
		f := Parse(NewSource("example.plant", r.Example), nil)
		if len(f.Problems) > 0 || len(f.Statements) == 0 {
			t.Errorf("%s: the example cannot be read: %+v", r.Keyword, f.Problems)
			continue
		}
		if f.Statements[0].Head.Keyword != r.Keyword {
			t.Errorf("%s: the example shows %s", r.Keyword, f.Statements[0].Head.Keyword)
		}
		b := bindHead(f.Statements[0].Head, r)
		for _, p := range b.Problems {
			t.Errorf("%s: %s: %s (%s) in %s", r.Keyword, p.Rule, p.Message, p.Mend, r.Example)
		}
	}
}

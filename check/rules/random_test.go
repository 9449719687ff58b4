package rules

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"testing"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
	"example.org/tundish/testdata/plants"
)

// randomPlants judges texts of the generator.
type randomPlants struct {
	cache *lang.Cache
	files map[string]*lang.File
}

// load gives the catalogue, and files that use each other as none should.
func (p *randomPlants) load(name string) (*lang.File, error) {
	if f := p.files[name]; f != nil {
		return f, nil
	}
	return nil, errors.New("no such file")
}

func newRandomPlants(t testing.TB) *randomPlants {
	t.Helper()
	b, err := os.ReadFile("../../examples/" + plants.Catalogue)
	if err != nil {
		t.Fatal(err)
	}
	p := &randomPlants{cache: lang.NewCache(), files: map[string]*lang.File{}}
	add := func(name, text string) { p.files[name] = parsed(name, text, p.cache) }
	add(plants.Catalogue, string(b))
	add("circle.plant", "catalogue \"circle\"\nuse \"circle.plant\"\n")
	for i := range 12 {
		add(fmt.Sprintf("chain-%d.plant", i), fmt.Sprintf("catalogue \"chain\"\nuse \"chain-%d.plant\"\n", i+1))
	}
	return p
}

func (p *randomPlants) judge(text string) *check.Report {
	f := parsed("random.plant", text, p.cache)
	return check.Run(check.Input{Plant: plant.Resolve(f, p.load), Rules: All(), Today: lang.Date{Year: 2026, Month: 2, Day: 1}})
}

// A thousand sound plants of each shape at random give no error, no warning and
// no open question.
func TestSoundAtRandom(t *testing.T) {
	n := 1000
	if testing.Short() {
		n = 100
	}
	p := newRandomPlants(t)
	for _, shape := range shapes {
		t.Run(shape.name, func(t *testing.T) {
			bad, size := 0, 0
			for seed := range uint64(n) {
				text := shape.plant(rand.New(rand.NewPCG(seed, 1)))
				size += len(text)
				rep := p.judge(text)
				for i := range rep.Findings {
					f := &rep.Findings[i]
					if f.Severity == lang.Note {
						continue
					}
					src := rep.Plant.File.Source
					line := src.LineOf(f.Span.Start)
					t.Errorf("seed %d: %s %s: %s\n    %s", seed, f.Severity, f.Rule, f.Message, src.Text[src.LineStart(line):src.LineStart(line+1)])
					bad++
				}
				for i := range rep.Unknowns {
					t.Errorf("seed %d: %s not evaluated, needs %s", seed, rep.Unknowns[i].Rule, rep.Unknowns[i].Needs)
					bad++
				}
				if bad > 20 {
					t.Fatal("and so on")
				}
			}
			if mean := size / n; shape.bytes != 0 && (mean < shape.bytes*9/10 || mean > shape.bytes*11/10) {
				t.Errorf("a plant has %d bytes, not about %d", mean, shape.bytes)
			}
		})
	}
}

// shapes are the kinds of text that the generator makes.
var shapes = []struct {
	name  string
	plant func(*rand.Rand) string
	bytes int // that it has on the average; 0: as it comes
}{
	{"whole", plants.Sound, 0},
	{"short", plants.Short, 3000},
}

// Each kind of fault, put into sound plants of each shape, is found by its own
// rule, and no rule that it does not concern speaks. Notes count as silence,
// unless the fault is one.
func TestSeededFaults(t *testing.T) {
	p := newRandomPlants(t)
	for i := range plants.Faults {
		f := &plants.Faults[i]
		t.Run(f.String(), func(t *testing.T) {
			tried := 0
			for _, shape := range shapes {
				inShape := 0
				for seed := uint64(0); inShape < 3 && seed < 100; seed++ {
					sound := shape.plant(rand.New(rand.NewPCG(seed, 2)))
					texts := f.Breaks(sound)
					if len(texts) == 0 {
						continue
					}
					if base := f.Base(sound); base != sound {
						rep := p.judge(base)
						for k := range rep.Findings {
							if fd := &rep.Findings[k]; fd.Severity != lang.Note || fd.Rule == f.Rule {
								t.Fatalf("%s, seed %d, without the fault: %s: %s", shape.name, seed, fd.Rule, fd.Message)
							}
						}
					}
					tried++
					inShape++
					if why := p.find(f, texts); why != "" {
						t.Fatalf("%s, seed %d: %s", shape.name, seed, why)
					}
				}
			}
			if tried == 0 {
				t.Error("no plant has what this fault breaks")
			}
		})
	}
}

// find judges texts with a fault in several degrees until its rule speaks. It
// tells what is wrong with that.
func (p *randomPlants) find(f *plants.Fault, texts []string) string {
	for _, text := range texts {
		rep := p.judge(text)
		found, others := false, ""
		for k := range rep.Findings {
			fd := &rep.Findings[k]
			if found = found || fd.Rule == f.Rule; fd.Severity != lang.Note && !f.Allowed(fd.Rule) {
				others += "\n    also " + fd.Rule + ": " + fd.Message
			}
		}
		if others != "" {
			return others
		}
		if found {
			return ""
		}
	}
	return "not found"
}

// without are the rules that no change of one plant's text can trigger, or that
// others put to the test.
var without = map[string]string{
	"archive-broken":          "of archives: TestHostileArchives",
	"archive-too-large":       "of archives: TestHostileArchives",
	"member-outside":          "of archives: TestHostileArchives",
	"turndown-too-small":      "asks for units larger than the generator's: testdata/rules/turndown-too-small.txtar",
	"valves-starve-units":     "asks for circuits without a separator, which the generator does not draw: testdata/rules/valves-starve-units.txtar",
	"exchanger-loss-high":     "asks for a plate with a loss of its own, which the catalogue does not have that small: testdata/rules/exchanger-loss-high.txtar",
	"gas-test-too-weak":       "of the US code, and the generator's plants are British: testdata/rules/gas-test-too-weak.txtar",
	"handover-basics-missing": "of records: testdata/rules/handover-basics-missing.txtar",
	"not-a-plant":             "of records: TestRecordOfNoPlant",
	"internal-fault":          "a fault of the tool in a rule, which nothing here can bring about",
	"not-finished":            "a fault of the tool on a file: TestInterruptAndShield",
}

// Every rule has a fault that it is put to the test by, or stands in the list of
// those that cannot have one. Rules on records have theirs beside the example of a
// record.
func TestEveryRuleHasAFault(t *testing.T) {
	seeded := map[string]bool{}
	for _, id := range plants.Names() {
		seeded[id] = true
	}
	ids := map[string]bool{}
	for _, r := range All() {
		if ids[r.ID] = true; r.Group == check.Record {
			without[r.ID] = "of records: TestRecord"
		}
	}
	for _, k := range lang.ProblemKinds {
		ids[k.ID] = true
	}
	for id := range ids {
		switch {
		case seeded[id] && without[id] != "":
			t.Errorf("%s has a fault and stands among those without one", id)
		case !seeded[id] && without[id] == "":
			t.Errorf("%s has no fault in testdata/plants that it is put to the test by", id)
		}
	}
	for i := range plants.Faults {
		for _, id := range append([]string{plants.Faults[i].Rule}, plants.Faults[i].Also...) {
			if !ids[id] && id != plants.AnyRule {
				t.Errorf("%s is no rule", id)
			}
		}
	}
}

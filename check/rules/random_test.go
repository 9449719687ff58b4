package rules

import (
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
	cat   *lang.File
}

func newRandomPlants(t testing.TB) *randomPlants {
	t.Helper()
	b, err := os.ReadFile("../../examples/" + plants.Catalogue)
	if err != nil {
		t.Fatal(err)
	}
	p := &randomPlants{cache: lang.NewCache()}
	p.cat = parsed(plants.Catalogue, string(b), p.cache)
	return p
}

func (p *randomPlants) judge(text string) *check.Report {
	f := parsed("random.plant", text, p.cache)
	return check.Run(check.Input{Plant: plant.Resolve(f, func(string) (*lang.File, error) { return p.cat, nil }), Rules: All(), Today: lang.Date{Year: 2026, Month: 2, Day: 1}})
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

// Each kind of fault, put into sound plants, is found by its own rule, and no
// rule that it does not concern speaks. Notes count as silence.
func TestSeededFaults(t *testing.T) {
	p := newRandomPlants(t)
	for i := range plants.Faults {
		f := &plants.Faults[i]
		t.Run(f.String(), func(t *testing.T) {
			tried := 0
			for seed := uint64(0); tried < 8 && seed < 200; seed++ {
				text, ok := f.Break(plants.Sound(rand.New(rand.NewPCG(seed, 2))))
				if !ok {
					continue
				}
				tried++
				rep := p.judge(text)
				found := false
				for k := range rep.Findings {
					fd := &rep.Findings[k]
					found = found || fd.Rule == f.Rule
					if fd.Severity != lang.Note && !f.Allowed(fd.Rule) {
						t.Errorf("seed %d: also %s: %s", seed, fd.Rule, fd.Message)
					}
				}
				if !found {
					t.Errorf("seed %d: not found", seed)
				}
				if t.Failed() {
					return
				}
			}
			if tried == 0 {
				t.Error("no plant has what this fault breaks")
			}
		})
	}
}

package solve

import (
	"os"
	"testing"

	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// example resolves a plant of the examples with their catalogue.
func example(tb testing.TB, name string) *plant.Plant {
	tb.Helper()
	read := func(name string) *lang.File {
		b, err := os.ReadFile("../../examples/" + name)
		if err != nil {
			tb.Fatal(err)
		}
		f := lang.Parse(lang.NewSource(name, string(b)), nil)
		lang.Bind(f, lang.Language())
		return f
	}
	cat := read("catalogue.plant")
	return plant.Resolve(read(name), func(string) (*lang.File, error) { return cat, nil })
}

// BenchmarkWater solves the water side of eight units for every set of running
// units, with nothing remembered.
func BenchmarkWater(b *testing.B) {
	p := example(b, "back-to-back.plant")
	b.ReportAllocs()
	for b.Loop() {
		Forget()
		c := &Context{Results: NewResults(p), P: p}
		solveWater(c)
	}
}

// BenchmarkStage times each solver of the plant of eight units by itself.
func BenchmarkStage(b *testing.B) {
	p := example(b, "back-to-back.plant")
	for i, s := range stages {
		b.Run(stageNames[i], func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				Forget()
				c := &Context{Results: NewResults(p), P: p}
				s(c)
			}
		})
	}
}

var stageNames = []string{"capacity", "gas", "water", "flue", "season", "terminals", "condensate", "air", "safety", "insulation", "quality", "frame", "tests"}

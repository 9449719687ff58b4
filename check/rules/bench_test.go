package rules

import (
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
	"example.org/tundish/testdata/plants"
)

// benchFiles reads an example and its catalogue; small cuts the plant down to
// about 3 KB by leaving out the blocks after the headers.
func benchFiles(b *testing.B, small bool) (text, catalogue string) {
	b.Helper()
	raw, err := os.ReadFile("../../examples/back-to-back.plant")
	if err != nil {
		b.Fatal(err)
	}
	cat, err := os.ReadFile("../../examples/catalogue.plant")
	if err != nil {
		b.Fatal(err)
	}
	text = string(raw)
	if small {
		text = text[:strings.Index(text, "\nroom {")]
	}
	return text, string(cat)
}

func parsed(name, text string, cache *lang.Cache) *lang.File {
	f := lang.Parse(lang.NewSource(name, text), cache)
	lang.Bind(f, lang.Language())
	return f
}

// BenchmarkCold parses, resolves, solves and judges a plant of eight units with
// nothing kept from before but the catalogue.
func BenchmarkCold(b *testing.B) {
	for _, size := range []string{"whole", "3-kB"} {
		b.Run(size, func(b *testing.B) {
			text, catalogue := benchFiles(b, size != "whole")
			cat := parsed("catalogue.plant", catalogue, nil)
			load := func(string) (*lang.File, error) { return cat, nil }
			b.SetBytes(int64(len(text)))
			b.ReportAllocs()
			for b.Loop() {
				solve.Forget()
				f := parsed("b.plant", text, nil)
				check.Run(check.Input{Plant: plant.Resolve(f, load), Rules: All()})
			}
		})
	}
}

// BenchmarkStages times each stage of the whole plant by itself.
func BenchmarkStages(b *testing.B) {
	text, catalogue := benchFiles(b, false)
	cat := parsed("catalogue.plant", catalogue, nil)
	load := func(string) (*lang.File, error) { return cat, nil }
	f := parsed("b.plant", text, nil)
	p := plant.Resolve(f, load)
	b.Run("parse", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			lang.Parse(lang.NewSource("b.plant", text), nil)
		}
	})
	b.Run("bind", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			parsed("b.plant", text, nil)
		}
	})
	b.Run("resolve", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			plant.Resolve(f, load)
		}
	})
	b.Run("solve", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			solve.Forget()
			solve.Run(p)
		}
	})
	b.Run("solve-and-judge", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			solve.Forget()
			check.Run(check.Input{Plant: p, Rules: All()})
		}
	})
}

// BenchmarkWarm judges random plants one after the other with a statement cache
// that knows their lines, as a run over an archive does.
func BenchmarkWarm(b *testing.B) {
	p := newRandomPlants(b)
	texts := make([]string, 256)
	size := 0
	for i := range texts {
		texts[i] = plants.Short(rand.New(rand.NewPCG(uint64(i), 5)))
		size += len(texts[i])
		p.judge(texts[i])
	}
	b.SetBytes(int64(size / len(texts)))
	b.ReportAllocs()
	i := 0
	for b.Loop() {
		p.judge(texts[i%len(texts)])
		i++
	}
}

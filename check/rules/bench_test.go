package rules

import (
	"fmt"
	"math/rand/v2"
	"os"
	"runtime/debug"
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

// slowCollector sets the pace at which the program collects garbage.
func slowCollector(b *testing.B) {
	before := debug.SetGCPercent(400)
	b.Cleanup(func() { debug.SetGCPercent(before) })
}

func parsed(name, text string, cache *lang.Cache) *lang.File {
	f := lang.Parse(lang.NewSource(name, text), cache)
	lang.Bind(f, lang.Language())
	return f
}

// BenchmarkCold parses, resolves, solves and judges a plant of eight units with
// nothing known from before but the catalogue. Memory is given back after each
// check and garbage collected at the pace of the program, as in a run over an
// archive.
func BenchmarkCold(b *testing.B) {
	slowCollector(b)
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
				check.Run(check.Input{Plant: plant.Resolve(f, load), Rules: All()}).Release()
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
			plant.Resolve(f, load).Release()
		}
	})
	b.Run("solve", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			solve.Forget()
			solve.Run(p).Release()
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
	slowCollector(b)
	b.SetBytes(int64(size / len(texts)))
	b.ReportAllocs()
	i := 0
	for b.Loop() {
		p.judge(texts[i%len(texts)]).Release()
		i++
	}
}

// BenchmarkEdit judges a plant of 5,000 lines, 2,300 circuits among them, after a
// digit of one line was typed over, as the language server does.
func BenchmarkEdit(b *testing.B) {
	slowCollector(b)
	text, catalogue := benchFiles(b, false)
	var more strings.Builder
	for i := strings.Count(text, "\n"); i < 5000; i += 2 {
		fmt.Fprintf(&more, "  pipe X%d steel DN50 %d m from Exch to Y%d bends 2 off\n  circuit Y%d %d.5 m3/h 30 kPa 70/50 degC mixed\n", i, 3+i%7, i, i, 1+i%3)
	}
	const mark = "  content         6400 l\n}\n\nsafety"
	if !strings.Contains(text, mark) || !strings.Contains(text, "22 m rise") {
		b.Fatal("the example changed")
	}
	text = strings.Replace(text, mark, "  content         6400 l\n"+more.String()+"}\n\nsafety", 1)
	texts := [2]string{text, strings.Replace(text, "22 m rise", "26 m rise", 1)}
	cat := parsed("catalogue.plant", catalogue, nil)
	load := func(string) (*lang.File, error) { return cat, nil }
	cache := lang.NewCacheSize(24 << 20) // the server's
	b.ReportAllocs()
	i, found := 0, 0
	for b.Loop() {
		p := plant.Resolve(parsed("b.plant", texts[i%2], cache), load)
		found = len(check.Run(check.Input{Plant: p, Rules: All(), Expected: found}).Findings)
		i++
	}
}

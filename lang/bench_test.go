package lang

import (
	"os"
	"strings"
	"testing"
)

// benchText is a specification of 300 lines.
func benchText(b *testing.B) string {
	b.Helper()
	raw, err := os.ReadFile("../examples/back-to-back.plant")
	if err != nil {
		b.Fatal(err)
	}
	lines := strings.SplitAfter(string(raw), "\n")
	for len(lines) < 300 {
		lines = append(lines, "# "+strings.Repeat("filler ", 5)+"\n")
	}
	return strings.Join(lines[:300], "")
}

func BenchmarkParseCold(b *testing.B) {
	text := benchText(b)
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		Parse(NewSource("b.plant", text), nil)
	}
}

func BenchmarkParseWarm(b *testing.B) {
	text := benchText(b)
	cache := NewCache()
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		Parse(NewSource("b.plant", text), cache)
	}
}

// BenchmarkFileCold reads and binds a file into memory that the last gave back, as
// a run over an archive does with a file of which it knows no line.
func BenchmarkFileCold(b *testing.B) {
	text := benchText(b)
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		f := Parse(NewSource("b.plant", text), nil)
		Bind(f, Language())
		f.Release()
	}
}

// BenchmarkFileWarm is BenchmarkFileCold with a cache that knows each line.
func BenchmarkFileWarm(b *testing.B) {
	text := benchText(b)
	cache := NewCache()
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		f := Parse(NewSource("b.plant", text), cache)
		Bind(f, Language())
		f.Release()
	}
}

func BenchmarkTokens(b *testing.B) {
	text := benchText(b)
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		Tokens(text)
	}
}

func BenchmarkBindWarm(b *testing.B) {
	text := benchText(b)
	cache := NewCache()
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		Bind(Parse(NewSource("b.plant", text), cache), Language())
	}
}

func BenchmarkFormat(b *testing.B) {
	text := benchText(b)
	f := Parse(NewSource("b.plant", text), nil)
	Bind(f, Language())
	b.ReportAllocs()
	for b.Loop() {
		Format(f)
	}
}

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

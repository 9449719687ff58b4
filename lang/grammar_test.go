package lang

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"
	"strconv"
	"strings"
	"testing"
)

// TestBothReadersAgree: a statement that is read directly gives the tree that the
// parser library gives, and both find fault with the same statements. Tried on
// every line of the examples, of the tests of the rules, of the seeds of the fuzz
// tests and of texts thrown together.
func TestBothReadersAgree(t *testing.T) {
	read := 0
	try := func(text string) {
		tokens := significant(Tokens(text))
		tokens = tokens[:len(tokens)-1] // the end of the file
		if len(tokens) == 0 {
			return
		}
		base := tokens[0].Span.Start
		head := text[base:tokens[len(tokens)-1].Span.End]
		r := reader{text: head, base: base, tokens: tokens, memory: &memory{}}
		var h Head
		fault := r.read(&h)
		n, err := parseByLibrary(head, tokens, base)
		switch {
		case (fault != nil) != (n.fault != nil) || (fault != nil) != (err != nil):
			t.Errorf("%q: directly %v, by the library %v, %v", head, fault, n.fault, err)
		case fault != nil:
			if *fault != *n.fault {
				t.Errorf("%q: directly %v, by the library %v", head, *fault, *n.fault)
			}
		case h.Keyword != n.head.Keyword || h.KeySpan != n.head.KeySpan || !reflect.DeepEqual(h.Items, n.head.Items):
			t.Errorf("%q: directly %+v, by the library %+v", head, h.Items, n.head.Items)
		default:
			read++
		}
	}
	lines := func(text string) {
		for line := range strings.Lines(text) {
			try(line)
		}
		for _, st := range Parse(NewSource("", text), nil).Statements {
			Walk(&File{Statements: []*Statement{st}}, func(st *Statement) bool {
				try(st.Head.Text) // of several lines, too
				return true
			})
		}
	}
	eachSeed(t, lines)
	for _, pattern := range []string{"testdata/fuzz/*/*", "../testdata/rules/*.txtar", "../testdata/lang/*"} {
		files, err := filepath.Glob(pattern)
		if err != nil || len(files) == 0 {
			t.Fatalf("%s: %d files, %v", pattern, len(files), err)
		}
		for _, path := range files {
			b, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			text := string(b)
			if s, ok := strings.CutPrefix(text, "go test fuzz v1\nstring("); ok {
				if text, err = strconv.Unquote(strings.TrimSuffix(strings.TrimSpace(s), ")")); err != nil {
					t.Fatalf("%s: %v", path, err)
				}
			}
			lines(text)
		}
	}
	for seed := range uint64(5000) {
		lines(soup(rand.New(rand.NewPCG(seed, 11))))
	}
	if read < 5000 {
		t.Errorf("only %d statements were read", read)
	}
	t.Logf("%d statements read", read)
}

// TestNumber: the short way gives the number of the library to the last bit.
func TestNumber(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 3))
	for range 200000 {
		s := strconv.FormatUint(r.Uint64N(uint64(1)<<(1+r.UintN(50))), 10)
		if k := r.IntN(len(s) + 1); k > 0 && k < len(s) {
			s = s[:k] + "." + s[k:]
		}
		if r.IntN(4) == 0 {
			s = "-" + s
		}
		want, err := strconv.ParseFloat(s, 64)
		got, ok := number(s)
		if err != nil || !ok || got != want {
			t.Fatalf("%s: %v, want %v (%v)", s, got, want, err)
		}
	}
	for _, s := range []string{"", "-", ".", "1.2.3", "1e5", strings.Repeat("9", 31)} {
		if v, ok := number(s); ok {
			t.Errorf("%q was read as %v", s, v)
		}
	}
}

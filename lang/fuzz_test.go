package lang

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"
)

// seeds hands out the example plants and texts that broke readers before.
func seeds(f *testing.F) { eachSeed(f, func(text string) { f.Add(text) }) }

func eachSeed(t testing.TB, add func(text string)) {
	files, _ := filepath.Glob("../examples/*.plant")
	for _, p := range files {
		b, err := os.ReadFile(p)
		if err != nil {
			t.Fatal(err)
		}
		add(string(b))
	}
	for _, s := range []string{
		"", "\x00", "{", "}", "{{{{", "}}}}", "\ufeffplant \"x\"\n", "pipe", "pipe G1 steel DN", "pipe G1 22", "a \"unclosed\nb 1 m\n", "require (((((", "require U1.x <= \"because",
		"units U1..U8 {\n type", "x 1/0 in", "x 1..2..3 m", "x 80/60/40 degC", "x 1 1/4 in", "load Heating 5\r\n}\r\n{", "# only a comment", "a,b,,c", "a 5 µS/cm °C ²", strings.Repeat("(", 10000), strings.Repeat("a {", 500),
		"a 99999999999999999999999999999999999999999 m", "plant \"x\"\nbasis {\nunits U1..U8 {\n}\n", "\xff\xfe", "wire U1..U8.damper to U1..U8 terminal X4",
	} {
		add(s)
	}
}

func inRange(t *testing.T, s Span, n int) {
	t.Helper()
	if s.Start < 0 || s.End < s.Start || s.End > n {
		t.Fatalf("span %v of %d bytes", s, n)
	}
}

// FuzzParse: parsing and binding never panic, every span lies in the text, and
// a second parse through a cache says the same, in memory that other texts used.
func FuzzParse(f *testing.F) {
	seeds(f)
	cache := NewCache()
	f.Fuzz(func(t *testing.T, text string) { checkParse(t, cache, text) })
}

func checkParse(t *testing.T, cache *Cache, text string) {
	file := Parse(NewSource("f.plant", text), nil)
	Bind(file, Language())
	again := Parse(NewSource("f.plant", text), cache)
	Bind(again, Language())
	if len(file.Problems) != len(again.Problems) {
		t.Fatalf("%d problems without cache, %d with", len(file.Problems), len(again.Problems))
	}
	for _, p := range file.Problems {
		inRange(t, p.Span, len(text))
		if p.Message == "" || p.Rule == "" {
			t.Fatalf("a problem without words: %+v", p)
		}
	}
	count := func(f *File) (n int) {
		Walk(f, func(st *Statement) bool {
			inRange(t, st.HeadSpan(), len(text))
			inRange(t, st.Span(), len(text))
			for _, it := range st.Head.Items {
				inRange(t, st.Abs(it.Span()), len(text))
				for _, e := range it.Exprs {
					inRange(t, st.Abs(e.Span), len(text))
				}
			}
			for _, child := range st.Block {
				if child.Parent != st {
					t.Fatalf("a statement in a block that is not its parent's")
				}
			}
			n++
			return true
		})
		return n
	}
	if a, b := count(file), count(again); a != b {
		t.Fatalf("%d statements without cache, %d with", a, b)
	}
	for i := range file.Problems {
		if a, b := file.Problems[i], again.Problems[i]; a.Span != b.Span || a.Rule != b.Rule || a.Message != b.Message {
			t.Fatalf("without cache %+v, with %+v", a, b)
		}
	}
	comments := 0
	for _, tok := range Tokens(text) {
		inRange(t, tok.Span, len(text))
		if tok.Kind == CommentToken {
			comments++
		}
	}
	if len(text) <= MaxFileSize && (comments != len(file.Comments) || comments != len(again.Comments)) {
		t.Fatalf("%d comments, %d and %d kept", comments, len(file.Comments), len(again.Comments))
	}
	file.Release()
	again.Release()
}

// FuzzFormat: formatting is idempotent, keeps every comment and every text, and
// the meaning of what can be read.
func FuzzFormat(f *testing.F) {
	seeds(f)
	f.Fuzz(checkFormat)
}

func checkFormat(t *testing.T, text string) {
	if !utf8.ValidString(text) {
		return // a file that is no text is given back unchanged
	}
	file := bound(text)
	once := Format(file)
	if got := Apply(text, FormatRange(file, 0, file.Source.Lines())); got != once {
		t.Fatalf("the edits of all lines give another text:\n%q\n%q", got, once)
	}
	if got := Apply(once, Edits(once, text)); got != text {
		t.Fatalf("the edits back give another text:\n%q\n%q", got, text)
	}
	if twice := formatText(once); twice != once {
		t.Fatalf("not idempotent:\n%q\n%q\n%q", text, once, twice)
	}
	if a, b := kinds(text), kinds(once); a != b {
		t.Fatalf("something was lost from %q:\n%s\n%s", text, a, b)
	}
}

func formatText(text string) string { return Format(bound(text)) }

// kinds counts tokens by kind and text, without order.
func kinds(text string) string {
	count := map[string]int{}
	for _, tok := range Tokens(text) {
		switch tok.Kind {
		case NewlineToken, EndOfFile:
		default:
			count[strings.TrimRight(tok.Text(text), " \t\r")]++
		}
	}
	var list []string
	for k, n := range count {
		for range n {
			list = append(list, k)
		}
	}
	return strings.Join(sortedStrings(list), "|")
}

func sortedStrings(list []string) []string {
	out := append([]string(nil), list...)
	for i := 1; i < len(out); i++ {
		for j := i; j > 0 && out[j] < out[j-1]; j-- {
			out[j], out[j-1] = out[j-1], out[j]
		}
	}
	return out
}

// FuzzPositions: offset to line and column and back.
func FuzzPositions(f *testing.F) {
	seeds(f)
	f.Fuzz(func(t *testing.T, text string) {
		src := NewSource("f.plant", text)
		for off := 0; off <= len(text); off++ {
			if off < len(text) && !utf8.RuneStart(text[off]) && utf8.ValidString(text) {
				continue
			}
			line, col := src.Position(off)
			if line < 1 || col < 1 || line > src.Lines() {
				t.Fatalf("offset %d gives %d:%d", off, line, col)
			}
			if utf8.ValidString(text) && src.Offset(line, col) != off {
				t.Fatalf("offset %d gives %d:%d gives %d", off, line, col, src.Offset(line, col))
			}
			if off > 512 {
				break
			}
		}
	})
}

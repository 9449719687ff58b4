package lang

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func bound(text string) *File {
	f := Parse(NewSource("f.plant", text), nil)
	Bind(f, Language())
	return f
}

// plants are whole specifications: the examples and the one of this package.
func plants(t testing.TB) map[string]string {
	t.Helper()
	out := map[string]string{}
	for _, pattern := range []string{"../examples/*.plant", "../testdata/lang/*.plant"} {
		files, err := filepath.Glob(pattern)
		if err != nil || len(files) == 0 {
			t.Fatalf("no files %s: %v", pattern, err)
		}
		for _, p := range files {
			b, err := os.ReadFile(p)
			if err != nil {
				t.Fatal(err)
			}
			out[filepath.Base(p)] = string(b)
		}
	}
	return out
}

// disarrange changes blanks, blank lines and line ends of a text, but no word.
func disarrange(r *rand.Rand, text string) string {
	var b strings.Builder
	for _, l := range strings.SplitAfter(text, "\n") {
		quoted := false
		for i := 0; i < len(l); i++ {
			switch c := l[i]; {
			case c == '#' && !quoted:
				b.WriteString(l[i:])
				i = len(l)
			case c == '"':
				quoted = !quoted
				b.WriteByte(c)
			case c == ' ' && !quoted && r.IntN(3) == 0:
				b.WriteString([]string{"  ", "\t", "    "}[r.IntN(3)])
			case c == '\n' && r.IntN(6) == 0:
				b.WriteString(" \n\n\n")
			default:
				b.WriteByte(c)
			}
		}
	}
	return b.String()
}

// TestFormatRange: the edits of all lines make the formatted text, those of a
// few lines touch no other line.
func TestFormatRange(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 11))
	for name, whole := range plants(t) {
		for round := range 12 {
			text := disarrange(r, whole)
			if round%3 == 2 {
				text = strings.ReplaceAll(text, "\n", "\r\n")
			}
			f := bound(text)
			want := Format(f)
			lines := f.Source.Lines()
			if got := Apply(text, FormatRange(f, 0, lines)); got != want {
				t.Fatalf("%s: the edits of the whole give another text:\n%s", name, firstDifference(got, want))
			}
			if again := FormatRange(bound(want), 0, lines); len(again) > 0 {
				t.Fatalf("%s: a formatted text is edited again: %+v", name, again)
			}
			from := r.IntN(lines)
			to := min(from+r.IntN(5), lines-1)
			for _, e := range FormatRange(f, from, to) {
				if e.Span.End < f.Source.LineStart(from) || e.Span.Start > f.Source.LineStart(to+1) {
					t.Errorf("%s: lines %d to %d: an edit at line %d", name, from, to, f.Source.LineOf(e.Span.Start))
				}
			}
		}
	}
}

func firstDifference(a, b string) string {
	i := 0
	for i < len(a) && i < len(b) && a[i] == b[i] {
		i++
	}
	return "got  ..." + a[max(0, i-60):min(len(a), i+60)] + "\nwant ..." + b[max(0, i-60):min(len(b), i+60)]
}

// The blank line that was just typed stays when the line before it is formatted.
func TestFormatRangeLeavesNextLine(t *testing.T) {
	const text = "plant \"x\"\nbasis {\n  altitude 42 m\n  \n}\n"
	got := Apply(text, FormatRange(bound(text), 2, 2))
	if want := "plant \"x\"\nbasis {\n  altitude        42 m\n  \n}\n"; got != want {
		t.Errorf("got %q", got)
	}
}

func TestEdits(t *testing.T) {
	for _, c := range []struct {
		name, old, text string
		edits           int
		changed         int // bytes taken out and put in
	}{
		{"nothing", "a\nb\n", "a\nb\n", 0, 0},
		{"only blanks, each by itself", "  a  b   c\n", "  a b c\n", 2, 3},
		{"a word", "a one b\n", "a two b\n", 1, 6},
		{"a line in", "a\nc\n", "a\nb\nc\n", 1, 2},
		{"a line out, others indented", "a\nx\nb\nc\n", "a\n  b\n  c\n", 3, 6},
		{"all", "a\n", "b\nc\n", 1, 4},
		{"no character cut", "a ü b\n", "a ö b\n", 1, 4},
		{"line ends", "a\r\nb\r\n", "a\nb\n", 2, 2},
		{"to nothing", "a\n", "", 1, 2},
		{"from nothing", "", "a\n", 1, 2},
	} {
		t.Run(c.name, func(t *testing.T) {
			edits := Edits(c.old, c.text)
			if got := Apply(c.old, edits); got != c.text {
				t.Fatalf("gives %q", got)
			}
			n := 0
			for _, e := range edits {
				n += e.Span.End - e.Span.Start + len(e.NewText)
			}
			if len(edits) != c.edits || n != c.changed {
				t.Errorf("%d edits of %d bytes: %+v", len(edits), n, edits)
			}
		})
	}
}

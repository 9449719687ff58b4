package lang

import (
	"fmt"
	"os"
	"strings"
	"testing"
)

func wholePlant(t testing.TB) string {
	t.Helper()
	b, err := os.ReadFile("../testdata/lang/whole.plant")
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// TestWholePlantIsSound: the specification on which the recovery is tried has
// no fault of its own, is canonical, and has about 250 lines.
func TestWholePlantIsSound(t *testing.T) {
	text := wholePlant(t)
	f := bound(text)
	for _, p := range f.Problems {
		line, _ := f.Source.Position(p.Span.Start)
		t.Errorf("line %d: %s %s", line, p.Rule, p.Message)
	}
	if got := Format(f); got != text {
		t.Errorf("not canonical:\n%s", firstDifference(got, text))
	}
	if n := f.Source.Lines(); n < 230 || n > 280 {
		t.Errorf("%d lines", n)
	}
}

// places counts the statements by their text and by the chain of lines of the
// statements in whose blocks they stand.
func places(f *File) map[string]int {
	out := map[string]int{}
	var walk func(list []*Statement, in string)
	walk = func(list []*Statement, in string) {
		for _, st := range list {
			out[in+": "+st.Head.Text]++
			walk(st.Block, fmt.Sprint(in, "/", f.Source.LineOf(st.Base)))
		}
	}
	walk(f.Statements, "")
	return out
}

// keptShare parses a damaged text and gives the share of the other statements
// that stand where they stood. The damage must not change the number of lines.
func keptShare(before map[string]int, damaged string, cache *Cache) float64 {
	after := places(Parse(NewSource("d.plant", damaged), cache))
	total, kept := 0, 0
	for k, n := range before {
		total += n
		kept += min(n, after[k])
	}
	return min(1, float64(kept)/float64(total-1))
}

// TestAnyTokenDeleted: without any one token, braces included, at least 99 % of
// the other statements stay in their block.
func TestAnyTokenDeleted(t *testing.T) {
	for name, text := range plants(t) {
		whole := Parse(NewSource(name, text), nil)
		before, cache := places(whole), NewCache()
		worst := 1.0
		for _, tok := range Tokens(text) {
			switch tok.Kind {
			case NewlineToken, CommentToken, EndOfFile:
				continue
			}
			share := keptShare(before, text[:tok.Span.Start]+text[tok.Span.End:], cache)
			worst = min(worst, share)
			if share < 0.99 {
				t.Errorf("%s: line %d without %q: only %.1f %% stay in place", name, whole.Source.LineOf(tok.Span.Start)+1, tok.Text(text), 100*share)
			}
		}
		t.Logf("%s: at least %.2f %% of the other statements stay in place", name, 100*worst)
	}
}

// TestHalfTyped: whatever single character is put in anywhere, and wherever a
// line breaks off, at least 99 % of the other statements stay in their block.
func TestHalfTyped(t *testing.T) {
	text := wholePlant(t)
	whole := Parse(NewSource("w.plant", text), nil)
	before, cache := places(whole), NewCache()
	heads := map[int]bool{} // where a statement with a block begins
	Walk(whole, func(st *Statement) bool {
		heads[st.Base] = !st.Braces.Empty()
		return true
	})
	step := 7 // every place was tried with 1; that takes ten seconds
	if testing.Short() {
		step = 61
	}
	try := func(at int, what, damaged string) {
		if share := keptShare(before, damaged, cache); share < 0.99 {
			line, col := whole.Source.Position(at)
			t.Errorf("%d:%d %s: only %.1f %% stay in place", line, col, what, 100*share)
		}
	}
	for at := 0; at < len(text); at += step {
		rest, _, _ := strings.Cut(text[at:], "\n")
		start := strings.LastIndexByte(text[:at], '\n') + 1
		after := strings.TrimSpace(rest)
		alone := strings.TrimSpace(text[start:at]) == "" && (after == "" || after[0] == '#')
		for _, c := range []string{"{", "}", "(", ")", `"`, ",", "x", "\x00"} {
			if c == "}" && alone {
				continue // a brace alone on its line is believed
			}
			try(at, "with "+c, text[:at]+c+text[at:])
		}
		if heads[at] {
			continue // nothing is left of the head: see TestLostHead
		}
		try(at, "as a comment", text[:at]+"#"+text[at:])
		try(at, "broken off", text[:at]+text[at+len(rest):])
	}
}

// TestLostHead: where the whole head of a block is gone, its statements stay
// together, are not taken for statements of another block, and one problem says
// what is wrong.
func TestLostHead(t *testing.T) {
	text := wholePlant(t)
	whole := bound(text)
	Walk(whole, func(st *Statement) bool {
		if st.Braces.Empty() {
			return true
		}
		damaged := text[:st.Base] + text[st.Braces.Start+1:]
		f := bound(damaged)
		if len(f.Problems) != 1 || f.Problems[0].Rule != "brace-missing" {
			t.Errorf("without %q: %d problems, the first %+v", st.Head.Text, len(f.Problems), f.Problems[0])
		}
		kept := false
		Walk(f, func(other *Statement) bool {
			kept = kept || other.Head.Text == "" && len(other.Block) == len(st.Block)
			return true
		})
		if !kept {
			t.Errorf("without %q its statements do not stay together", st.Head.Text)
		}
		return true
	})
}

package main

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"example.org/tundish/check"
	"example.org/tundish/check/report"
	"example.org/tundish/lang"
)

var testDay = lang.Date{Year: 2026, Month: 3, Day: 31}

func applyBest(text string, rep *check.Report) string {
	var edits []lang.Edit
	for i := range rep.Findings {
		for _, fix := range rep.Findings[i].Fixes {
			if fix.Best {
				edits = append(edits, fix.Edits...)
				break
			}
		}
	}
	return lang.Apply(text, edits)
}

// places tells in whose block each statement stands, by the line of the owner;
// deleting a token moves no line.
func places(f *lang.File) map[string]int {
	out := map[string]int{}
	var walk func(list []*lang.Statement, in int)
	walk = func(list []*lang.Statement, in int) {
		for _, st := range list {
			line, _ := f.Source.Position(st.Base)
			out[fmt.Sprintf("in %d: %s", in, st.Head.Text)]++
			walk(st.Block, line)
		}
	}
	walk(f.Statements, 0)
	return out
}

// TestDeletedToken deletes each token of a whole specification in turn. At
// least 99 % of the other statements must stay in their block, and no finding
// may come to a statement that neither held the token nor names something of
// the damaged statement.
func TestDeletedToken(t *testing.T) {
	t.Chdir(root)
	const name = "examples/back-to-back.plant"
	b, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	text := string(b)
	w, err := openWorkspace("examples")
	if err != nil {
		t.Fatal(err)
	}
	defer w.close()
	whole := w.parse(name, text)
	before := places(whole)
	total := 0
	for _, n := range before {
		total += n
	}
	known := map[string]bool{}
	for _, f := range w.checkText(name, text, testDay, &check.Settings{}).Findings {
		known[f.Rule+f.Message] = true
	}
	tokens, step := lang.Tokens(text), 1
	if testing.Short() {
		step = 13
	}
	worst := 1.0
	for i := 0; i < len(tokens); i += step {
		tok := tokens[i]
		switch tok.Kind {
		case lang.NewlineToken, lang.CommentToken, lang.EndOfFile:
			continue
		}
		cut := text[:tok.Span.Start] + text[tok.Span.End:]
		line, _ := whole.Source.Position(tok.Span.Start)
		after := places(w.parse(name, cut))
		kept := 0
		for k, n := range before {
			kept += min(n, after[k])
		}
		// The statement that held the token changes its own text, and where it
		// opens a block, what stands in it hangs on it.
		share := float64(kept) / float64(total-1)
		if share < worst {
			worst = share
		}
		if share < 0.99 {
			t.Errorf("line %d without %q: only %.1f %% of the statements stay in place", line, tok.Text(text), 100*share)
		}
		rep := w.checkText(name, cut, testDay, &check.Settings{})
		names := namesOn(whole, tok.Span.Start)
		for k := range rep.Findings {
			f := &rep.Findings[k]
			at, _ := rep.Plant.File.Source.Position(f.Span.Start)
			if known[f.Rule+f.Message] || at == line || f.Severity == lang.Note {
				continue
			}
			if depends(rep, f, names) || f.Rule == "brace-missing" && closes(whole, tok.Span.Start) == at {
				continue
			}
			if opener := opensBlock(whole, tok.Span.Start); opener {
				continue // what stands in the block hangs on its head
			}
			t.Errorf("line %d without %q: new finding on line %d: %s %s", line, tok.Text(text), at, f.Rule, f.Message)
		}
	}
	t.Logf("worst share of statements kept in place: %.2f %%", 100*worst)
}

// opensBlock tells whether the token belongs to the head of a statement with a
// block.
func opensBlock(f *lang.File, offset int) bool {
	found := false
	var walk func(list []*lang.Statement)
	walk = func(list []*lang.Statement) {
		for _, st := range list {
			if !st.Braces.Empty() && st.Base <= offset && offset <= st.Braces.Start {
				found = true
			}
			walk(st.Block)
		}
	}
	walk(f.Statements)
	return found
}

// closes gives the line of the statement whose closing brace stands at an
// offset, 0 for none.
func closes(f *lang.File, offset int) int {
	line := 0
	var walk func(list []*lang.Statement)
	walk = func(list []*lang.Statement) {
		for _, st := range list {
			if st.Braces.End == offset+1 {
				line, _ = f.Source.Position(st.Base)
			}
			walk(st.Block)
		}
	}
	walk(f.Statements)
	return line
}

// namesOn lists the names and the keyword of the statement that holds an offset.
func namesOn(f *lang.File, offset int) map[string]bool {
	out := map[string]bool{}
	var walk func(list []*lang.Statement, blocks []string)
	walk = func(list []*lang.Statement, blocks []string) {
		for _, st := range list {
			if s := st.HeadSpan(); s.Start <= offset && offset < s.End {
				for _, tok := range lang.Tokens(st.Head.Text) {
					if tok.Kind == lang.NameToken {
						out[tok.Text(st.Head.Text)] = true
					}
				}
				out[st.Head.Keyword] = true
				for _, b := range blocks {
					out["block "+b] = true
				}
			}
			walk(st.Block, append(blocks, st.Head.Keyword))
		}
	}
	walk(f.Statements, nil)
	return out
}

// depends tells whether a finding speaks of something that the damaged
// statement named or computed: its statement names one of the names, or its
// value is computed from the damaged block.
func depends(rep *check.Report, f *check.Finding, names map[string]bool) bool {
	if f.Source == report.LanguageSource { // a reference to a name that went with the token
		for n := range names {
			if strings.Contains(f.Message, n) {
				return true
			}
		}
	}
	if f.Quantity != nil || f.Rule == "requirement-not-met" {
		return true // a computed value may rest on any stated one
	}
	for _, tok := range lang.Tokens(rep.Plant.File.Source.Text[f.Span.Start:f.Span.End]) {
		if names[tok.Text(rep.Plant.File.Source.Text[f.Span.Start:f.Span.End])] {
			return true
		}
	}
	for n := range names {
		if strings.Contains(f.Message, n) || f.Part == n {
			return true
		}
	}
	return false
}

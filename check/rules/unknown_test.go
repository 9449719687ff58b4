package rules

import (
	"math/rand/v2"
	"strings"
	"testing"

	"example.org/tundish/lang"
	"example.org/tundish/testdata/plants"
)

// A sound plant in which one value, or all values of one statement, are left open
// with the word unknown has open questions but no fault.
func TestUnknownIsNoFault(t *testing.T) {
	p := newRandomPlants(t)
	seeds := uint64(2)
	if testing.Short() {
		seeds = 2
	}
	for seed := range seeds {
		text := plants.Sound(rand.New(rand.NewPCG(seed, 1)))
		f := lang.Parse(lang.NewSource("random.plant", text), nil)
		lang.Bind(f, lang.Language())
		var walk func(list []*lang.Statement)
		walk = func(list []*lang.Statement) {
			for _, st := range list {
				walk(st.Block)
				if st.Bound == nil || st.Bound.Row.Stage < 1 || st.Bound.Row.Stage > 14 || len(st.Block) > 0 || len(st.Bound.Fields) == 0 {
					continue
				}
				at := st.HeadSpan()
				// A name that is gone with its statement, and a requirement on it, are
				// faults of the text.
				try := func(s lang.Span, open string) {
					rep := p.judge(text[:s.Start] + open + text[s.End:])
					for i := range rep.Findings {
						if fd := &rep.Findings[i]; fd.Severity != lang.Note && fd.Rule != "unknown-name" && fd.Rule != "requirement-not-met" {
							t.Errorf("seed %d: with %q in place of %q in %q: %s %s: %s", seed, open, text[s.Start:s.End], text[at.Start:at.End], fd.Severity, fd.Rule, fd.Message)
						}
					}
				}
				try(at, opened(st))
				for i := range st.Bound.Fields {
					if v := st.Bound.Fields[i].Values; len(v) > 0 {
						try(st.Abs(lang.Span{Start: v[0].Expr.Span.Start, End: v[len(v)-1].Expr.Span.End}), "unknown")
					}
				}
			}
		}
		walk(f.Statements)
	}
}

// opened is the statement with its name and nothing else but unknown.
func opened(st *lang.Statement) string {
	words := []string{st.Head.Keyword}
	if n := st.Bound.Name; n != nil {
		end := n.Span.End
		if k := len(st.Bound.Names); k > 0 {
			end = st.Bound.Names[k-1].Span.End
		}
		words = append(words, st.Head.Text[n.Span.Start:end])
	}
	return strings.Join(append(words, "unknown"), " ")
}

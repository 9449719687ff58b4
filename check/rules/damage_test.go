package rules

import (
	"math/rand/v2"
	"testing"

	"example.org/tundish/lang"
	"example.org/tundish/testdata/plants"
)

// A sound plant in which one statement cannot be read, for its misspelt word or for
// a label whose value is not typed yet, has faults of the text only: what is not
// there may only be unreadable.
func TestDamageIsNoFault(t *testing.T) {
	ofText := map[string]bool{}
	for _, k := range lang.ProblemKinds {
		ofText[k.ID] = true
	}
	p := newRandomPlants(t)
	seeds := uint64(2)
	if testing.Short() {
		seeds = 1
	}
	for seed := range seeds {
		text := plants.Sound(rand.New(rand.NewPCG(seed, 3)))
		f := lang.Parse(lang.NewSource("random.plant", text), nil)
		lang.Bind(f, lang.Language())
		try := func(st *lang.Statement, s lang.Span, with string) {
			at := st.HeadSpan()
			rep := p.judge(text[:s.Start] + with + text[s.End:])
			for i := range rep.Findings {
				if fd := &rep.Findings[i]; !ofText[fd.Rule] && fd.Severity != lang.Note {
					t.Errorf("seed %d: with %q in place of %q in %q: %s %s: %s", seed, with, text[s.Start:s.End], text[at.Start:at.End], fd.Severity, fd.Rule, fd.Message)
				}
			}
		}
		var walk func(list []*lang.Statement)
		walk = func(list []*lang.Statement) {
			for _, st := range list {
				walk(st.Block)
				if st.Bound == nil || st.Bound.Row.Stage < 1 || st.Bound.Row.Stage > 14 {
					continue
				}
				at := st.HeadSpan()
				try(st, lang.Span{Start: at.Start, End: at.Start + len(st.Head.Keyword)}, "zz"+st.Head.Keyword)
				for i := range st.Bound.Fields {
					fd := &st.Bound.Fields[i]
					if v := fd.Values; len(v) > 0 && fd.Slot.Label != "" {
						try(st, st.Abs(lang.Span{Start: v[0].Expr.Span.Start, End: v[len(v)-1].Expr.Span.End}), "")
					}
				}
			}
		}
		walk(f.Statements)
	}
}

package sizing

import (
	"math"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

// finding stands for a finding across changes of sizes: the texts change, the
// lines do not.
type finding struct {
	rule string
	line int
}

// state is what the engine says of one set of sizes.
type state struct {
	rep      *check.Report
	count    map[finding]int
	score    float64 // findings by weight
	over     float64 // by how much limits are broken, summed up
	unknowns int
}

// gravity of a finding in the score: no number of lesser ones outweighs one
// error.
var gravity = map[lang.Severity]float64{lang.Error: 1e6, lang.Warning: 1e3, lang.Note: 1}

// judge runs the engine on the text with the sizes of the choices.
func (s *search) judge() *state {
	text := lang.Apply(s.text, s.edits())
	f := lang.Parse(lang.NewSource(s.name, text), s.cache)
	lang.Bind(f, lang.Language())
	p := plant.Resolve(f, s.load)
	st := &state{rep: s.check(p), count: map[finding]int{}}
	for i := range st.rep.Findings {
		fd := &st.rep.Findings[i]
		src := f.Source
		if fd.File != nil {
			src = fd.File.Source
		}
		st.count[finding{fd.Rule, src.LineOf(fd.Span.Start)}]++
		st.score += gravity[fd.Severity]
	}
	st.unknowns = len(st.rep.Unknowns)
	for i := range st.rep.Comparisons {
		c := &st.rep.Comparisons[i]
		if c.Holds {
			continue
		}
		if share, ok := c.Used(); ok && share > 0 {
			st.over += math.Log(share)
		} else { // a limit of zero has no share: by how much it is missed counts
			st.over += math.Log1p(math.Abs(c.Quantity.Num - c.Limit.Num))
		}
	}
	return st
}

// edits are those of every choice that is not as written.
func (s *search) edits() []lang.Edit {
	var out []lang.Edit
	for _, c := range s.choices {
		if c.now == c.from {
			continue
		}
		for _, span := range append([]lang.Span{c.span}, c.follow...) {
			out = append(out, lang.Edit{Span: span, NewText: c.text()})
		}
	}
	return out
}

// better tells a state with graver findings gone, or with limits broken by less.
func (st *state) better(than *state) bool {
	if st.score != than.score {
		return st.score < than.score
	}
	return st.over < than.over*(1-1e-9)-1e-12
}

// bears tells a state that brings no finding and no open question that the other
// does not have, and breaks no limit by more.
func (st *state) bears(than *state) bool {
	if st.unknowns > than.unknowns || st.over > than.over*(1+1e-9)+1e-12 {
		return false
	}
	for k, n := range st.count {
		if n > than.count[k] {
			return false
		}
	}
	return true
}

// fresh is a finding that this state has and the other has not.
func (st *state) fresh(than *state) *check.Finding {
	for i := range st.rep.Findings {
		fd := &st.rep.Findings[i]
		src := st.rep.Plant.File.Source
		if fd.File != nil {
			src = fd.File.Source
		}
		k := finding{fd.Rule, src.LineOf(fd.Span.Start)}
		if st.count[k] > than.count[k] {
			return fd
		}
	}
	return nil
}

// seen tells whether any value that a limit judges differs between two states: a
// size that no limit sees is the designer's, not ours.
func (st *state) seen(than *state) bool {
	a, b := st.rep.Comparisons, than.rep.Comparisons
	if len(a) != len(b) {
		return true
	}
	for i := range a {
		if differs(a[i].Quantity, b[i].Quantity) || math.Abs(a[i].Limit.Num-b[i].Limit.Num) > 1e-9*math.Abs(b[i].Limit.Num) {
			return true
		}
	}
	return false
}

func differs(a, b *solve.Quantity) bool {
	return math.Abs(a.Num-b.Num) > 1e-9*(math.Abs(a.Num)+math.Abs(b.Num))
}

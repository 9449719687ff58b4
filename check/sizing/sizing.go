package sizing

import (
	"sort"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// Input is a text to size, and how to judge it.
type Input struct {
	Name, Text string
	Load       plant.Loader // for catalogues; may be nil
	Cache      *lang.Cache  // may be nil
	// Check judges a resolved plant: the rules, limits and date are its own.
	Check func(*plant.Plant) *check.Report
	// Only limits the search to the statement that begins on this line, counted
	// from 0; negative: all of the plant.
	Only int
}

// Change is one proposed size.
type Change struct {
	Part     string // name, or the group as written
	Line     int    // from 0
	From, To string // as written and as proposed
	// Because is what would be wrong with the next smaller size, or why there is
	// none.
	Because string
	Edits   []lang.Edit // of the size and of the fittings that go with it
}

// Proposal is the outcome of a search.
type Proposal struct {
	Text          string        // the text with the proposed sizes
	Changes       []Change      // in order of text
	Kept          []Change      // looked at and left as written
	Before, After *check.Report // what the rules say
	Tried         int           // sets of sizes that the engine judged
}

// maxTrials bounds a search; a plant of eight units needs a few hundred.
const maxTrials = 5000

type search struct {
	name, text string
	load       plant.Loader
	cache      *lang.Cache
	check      func(*plant.Plant) *check.Report
	choices    []*choice
	tried      int
}

// Propose looks for the smallest standard sizes that bring no finding. First
// sizes grow, the one that mends most for its cost at a time, while that mends
// something; then they shrink, the dearest first, while no rule finds anything
// new. In the end no single size can go down. What sizes cannot mend stays and
// is in After.
func Propose(in Input) *Proposal {
	s := &search{name: in.Name, text: in.Text, load: in.Load, cache: in.Cache, check: in.Check}
	if s.cache == nil {
		s.cache = lang.NewCache()
	}
	f := lang.Parse(lang.NewSource(in.Name, in.Text), s.cache)
	lang.Bind(f, lang.Language())
	p := plant.Resolve(f, in.Load)
	for _, c := range choices(p) {
		if in.Only < 0 || f.Source.LineOf(c.part.Stmt.Base) == in.Only {
			s.choices = append(s.choices, c)
		}
	}
	out := &Proposal{Before: s.check(p)}
	now := s.judge()
	now = s.grow(now)
	now = s.shrink(now)
	out.After, out.Tried = now.rep, s.tried
	out.Text = lang.Apply(in.Text, s.edits())
	for _, c := range s.choices {
		ch := Change{Part: groupName(c.part), Line: f.Source.LineOf(c.part.Stmt.Base), From: in.Text[c.span.Start:c.span.End], To: c.text(), Because: s.reason(c, now)}
		if c.now == c.from {
			out.Kept = append(out.Kept, ch)
			continue
		}
		for _, span := range append([]lang.Span{c.span}, c.follow...) {
			ch.Edits = append(ch.Edits, lang.Edit{Span: span, NewText: c.text()})
		}
		out.Changes = append(out.Changes, ch)
	}
	return out
}

func groupName(p *plant.Part) string {
	if n := p.Bound.Name; n != nil && n.Kind == lang.SpanExpr {
		return n.Text + ".." + n.Last()
	}
	return p.Label()
}

// try judges the plant with one choice at another size, and gives the sizes of
// all choices with which it did; nil where that cannot be. A gas pipe takes what
// it feeds down with it, and its feeders up, so that no run widens on its way.
func (s *search) try(c *choice, to int) (*state, []int) {
	was := make([]int, len(s.choices))
	for i, o := range s.choices {
		was[i] = o.now
	}
	c.now = to
	fits := s.taper(c)
	tried := make([]int, len(s.choices))
	for i, o := range s.choices {
		tried[i] = o.now
	}
	var st *state
	if fits {
		s.tried++
		st = s.judge()
	}
	s.take(was)
	return st, tried
}

// take puts every choice at a size.
func (s *search) take(sizes []int) {
	for i, c := range s.choices {
		c.now = sizes[i]
	}
}

// taper fits the gas pipes before and behind a changed one to it.
func (s *search) taper(c *choice) bool {
	for up := c.feeder; up != nil && up.options[up.now].num < c.options[c.now].num; up = up.feeder {
		for up.options[up.now].num < c.options[c.now].num {
			if up.now+1 == len(up.options) {
				return false
			}
			up.now++
		}
	}
	for again := true; again; {
		again = false
		for _, down := range s.choices {
			if down.feeder == nil {
				continue
			}
			for down.options[down.now].num > down.feeder.options[down.feeder.now].num*(1+1e-9) {
				if down.now <= down.least {
					return false
				}
				down.now--
				again = true
			}
		}
	}
	return true
}

func (s *search) grow(now *state) *state {
	for s.tried < maxTrials {
		best := -1.0
		var bestState *state
		var bestSizes []int
		for _, c := range s.choices {
			if c.now+1 >= len(c.options) {
				continue
			}
			st, sizes := s.try(c, c.now+1)
			if st == nil || !st.better(now) || st.unknowns > now.unknowns {
				continue
			}
			if worth := gain(now, st) / cost(c); worth > best {
				best, bestState, bestSizes = worth, st, sizes
			}
		}
		if bestState == nil {
			return now
		}
		s.take(bestSizes)
		now = bestState
	}
	return now
}

// gain is what a step mends: graver findings count more, then broken limits.
func gain(from, to *state) float64 {
	return max(from.score-to.score, 0) + max(from.over-to.over, 0)
}

// cost is what a step up costs: length times the difference in size.
func cost(c *choice) float64 {
	return c.weight * max(c.options[min(c.now+1, len(c.options)-1)].num-c.options[c.now].num, 1e-6)
}

func (s *search) shrink(now *state) *state {
	order := append([]*choice(nil), s.choices...)
	sort.SliceStable(order, func(i, j int) bool {
		return order[i].weight*order[i].options[order[i].now].num > order[j].weight*order[j].options[order[j].now].num
	})
	for again := true; again && s.tried < maxTrials; {
		again = false
		for _, c := range order {
			for c.now > c.least && c.now > 0 {
				st, sizes := s.try(c, c.now-1)
				if st == nil || !st.bears(now) || !st.seen(now) {
					break
				}
				s.take(sizes)
				now, again = st, true
			}
		}
	}
	return now
}

// reason says why a size is not smaller.
func (s *search) reason(c *choice, now *state) string {
	switch {
	case c.now == 0:
		return "it is the smallest standard size"
	case c.now <= c.least:
		return "the unit's own connection is of this size"
	}
	smaller := c.options[c.now-1].text
	st, _ := s.try(c, c.now-1)
	if st == nil {
		return "what it feeds is of this size"
	}
	if fd := st.fresh(now); fd != nil {
		return "in " + smaller + ": " + fd.Message
	}
	if st.unknowns > now.unknowns {
		return "in " + smaller + " a rule could not decide"
	}
	if !st.bears(now) {
		return "in " + smaller + " a limit that is broken already would be broken by more"
	}
	return "no rule judges this size, so it stays as written"
}

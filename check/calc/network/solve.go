package network

import "math"

// Bounds of the Newton method.
const (
	stepsMost = 100   // Newton steps before giving up
	flowNear  = 1e-8  // flow error allowed, part of the greatest flow
	headNear  = 1e-9  // head error allowed round a loop, part of the greatest loss
	firmHead  = 1e30  // diagonal that pins a node
	cutMost   = 12    // times a step is cut back
	overshoot = 0.5   // share of the first slope that may be left at a step's end
	lossLeast = 1e-12 // m, error always allowed
	flowLeast = 1e-15 // m3/s, error always allowed
)

// Solve finds flows and heads. After an earlier success it starts from that
// answer. It returns ErrNoFixedHead, a *PathError, or ErrNotConverged; after an
// error no result is to be read.
func (s *Solver) Solve() error {
	s.steps = 0
	if !s.ordered {
		if err := s.arrange(); err != nil {
			return err
		}
	}
	warm := s.solved
	s.solved = false
	err := s.settle(warm)
	if err == ErrNotConverged && warm {
		err = s.settle(false)
	}
	s.solved = err == nil
	return err
}

// Steps is the number of Newton steps of the last Solve.
func (s *Solver) Steps() int { return s.steps }

func (s *Solver) settle(warm bool) error {
	s.begin(warm)
	// All wrong valves at once; if that goes round in circles, one by one with
	// leaking valves, and a last look without the leak.
	for _, stage := range [...]struct {
		leaky  bool
		rounds int
	}{{false, roundsTogether}, {true, roundsSingly}, {false, roundsTogether}} {
		s.leaky, s.sorted = stage.leaky, s.sorted && !stage.leaky
		for range stage.rounds {
			if err := s.sortParts(); err != nil {
				return err
			}
			if !s.newton() {
				return ErrNotConverged
			}
			if s.correct(stage.leaky) > 0 {
				continue
			}
			if !stage.leaky {
				return s.finish()
			}
			break
		}
		s.sorted = s.sorted && !stage.leaky
	}
	return ErrNotConverged
}

// begin sets the flows and heads to start from.
func (s *Solver) begin(warm bool) {
	fixed := s.head[s.junctions:]
	clear(s.rise)
	datum := s.datum
	for i := range s.nodes {
		if nd := &s.nodes[i]; nd.kind == fixedHead {
			fixed[nd.number] = nd.value
		}
	}
	s.datum = fixed[0]
	for i := range fixed {
		fixed[i] -= s.datum
	}
	if !warm {
		clear(s.head[:s.junctions])
		for i := range s.links {
			l := &s.links[i]
			l.q, l.held, l.woken, l.root = l.start, false, false, 0
		}
		s.sorted = false
		return
	}
	for i := range s.junctions {
		s.head[i] += datum - s.datum
	}
	woken := false
	for i := range s.links {
		woken = woken || s.links[i].woken
	}
	if !woken {
		return
	}
	// Branches that stood still have the slope of no flow, far from that of
	// the answer, once a link in them has opened.
	for i := range s.links {
		if l := &s.links[i]; l.woken || math.Abs(l.q) < 0.01*l.start {
			l.q, l.woken = l.start, false
		}
	}
}

// newton solves with the valves as they stand; it reports whether flows and
// heads satisfy every equation within flowNear and headNear.
func (s *Solver) newton() bool {
	for i := range s.links {
		l := &s.links[i]
		if s.blocked(l) {
			l.q, l.h, l.step = 0, 0, 0
			continue
		}
		s.evaluate(l)
	}
	for range stepsMost {
		if s.balance() {
			return true
		}
		s.steps++
		if !s.sparse.factor() {
			return false
		}
		copy(s.rise, s.surplus[:s.junctions])
		s.sparse.solve(s.rise)
		s.advance()
	}
	return false
}

// balance measures what is wrong with flows and heads and sets up the system
// for the next step. It reports whether nothing is.
func (s *Solver) balance() bool {
	n := s.junctions
	m := &s.sparse
	surplus := s.surplus
	clear(surplus)
	clear(m.entry)
	clear(m.diag)
	for i := range s.nodes {
		if nd := &s.nodes[i]; nd.kind == junction {
			surplus[nd.place] = -nd.value
		}
	}
	// Mass balance first: it needs the flows alone.
	var most, high, top float64
	for i := range s.links {
		l := &s.links[i]
		surplus[l.at] -= l.q
		surplus[l.end] += l.q
		most, high = max(most, math.Abs(l.q)), max(high, math.Abs(l.h))
	}
	even := true
	for i, v := range surplus[:n] {
		top = max(top, math.Abs(s.head[i]))
		if !(math.Abs(v) <= 1e-11*most+flowLeast) {
			even = false
		}
	}
	for _, v := range s.head[n:] {
		top = max(top, math.Abs(v))
	}
	// A link of very small slope turns the rounding of heads into flow.
	rounding := 1e-15 * top
	right := even
	for i := range s.links {
		l := &s.links[i]
		if s.blocked(l) {
			continue
		}
		miss := s.head[l.at] - s.head[l.end] - l.h
		flow := miss * l.invert
		if !(math.Abs(miss) <= headNear*high+rounding+lossLeast) ||
			!(math.Abs(flow) <= flowNear*most+rounding*l.invert+flowLeast) {
			right = false
		}
		surplus[l.at] -= flow
		surplus[l.end] += flow
		if l.at < int32(n) {
			m.diag[l.at] += l.invert
		}
		if l.end < int32(n) {
			m.diag[l.end] += l.invert
		}
		if l.cross >= 0 {
			m.entry[l.cross] -= l.invert
		}
	}
	for i, pinned := range s.pinned[:n] {
		if pinned {
			m.diag[i] += firmHead
		}
	}
	s.even = even
	return right
}

// advance moves the flows along the Newton step. Along a step that keeps the
// mass balance the sum over links of step x (h - difference of the new heads)
// is the slope of a convex function; it starts below zero, and where it ends
// far above zero the least value was overrun and the step is cut.
func (s *Solver) advance() {
	var start float64
	for i := range s.links {
		l := &s.links[i]
		if s.blocked(l) {
			continue
		}
		// Sums of small rises keep the balance to the last digits, which
		// differences of the new heads would not.
		miss := s.head[l.at] - s.head[l.end] - l.h + s.rise[l.at] - s.rise[l.end]
		l.base, l.step = l.q, miss*l.invert
		start -= l.step * miss
	}
	for i := range s.junctions {
		s.head[i] += s.rise[i]
	}
	end := s.move(1)
	if end <= -overshoot*start || !s.even {
		return
	}
	// Regula falsi; a side that stays twice has its value halved.
	low, high, left, right, side := 0.0, 1.0, start, end, 0
	for range cutMost {
		t := (low*right - high*left) / (right - left)
		slope := s.move(t)
		if math.Abs(slope) <= -overshoot*start {
			return
		}
		if slope > 0 {
			high, right = t, slope
			if side > 0 {
				left /= 2
			}
			side = 1
		} else {
			low, left = t, slope
			if side < 0 {
				right /= 2
			}
			side = -1
		}
	}
}

// move sets the flows at the part t of the step and returns the slope there.
func (s *Solver) move(t float64) float64 {
	var slope float64
	for i := range s.links {
		l := &s.links[i]
		if s.blocked(l) {
			continue
		}
		l.q = l.base + t*l.step
		s.evaluate(l)
		slope += l.step * (l.h - s.head[l.at] + s.head[l.end])
	}
	return slope
}

package network

// A non-return valve is open with a flow of 0 or more, or holds with a head
// across it that would drive water backwards. With the state of every valve
// given, the flows are unique, so the states can be sought by correction: all
// wrong valves at once, which nearly always ends after a round or two. Valves
// in a row, or several on a part that draws water, can make that go in
// circles. Then a valve that holds is given a leak, so that every choice of
// states has exactly one answer, and only the first wrong valve is changed in
// each round: the least-index rule of Murty for complementarity problems (from
// memory), which always ends.
const (
	roundsTogether = 12
	roundsSingly   = 1000
	leakSlope      = 1e9 // m per m3/s of a valve that leaks
)

// blocked reports that the link takes no part in the Newton steps.
func (s *Solver) blocked(l *link) bool { return l.shut || l.held && !s.leaky }

// correct changes the state of valves that contradict the flows and heads
// found, and returns how many it changed.
func (s *Solver) correct(one bool) int {
	var most, high float64
	for i := range s.links {
		l := &s.links[i]
		most, high = max(most, l.q, -l.q), max(high, l.h, -l.h)
	}
	changed := 0
	for i := range s.links {
		l := &s.links[i]
		if !l.oneWay || l.shut {
			continue
		}
		switch {
		case !l.held && l.q < -1e-12*most:
			l.held, l.q = true, 0
		case l.held && s.head[l.at]-s.head[l.end]-s.rest(l) > 1e-9*high+1e-12:
			l.held, l.q = false, l.start
		default:
			continue
		}
		changed++
		s.sorted = false
		if one {
			break
		}
	}
	return changed
}

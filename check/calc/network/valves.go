package network

// A non-return valve is open with a flow of 0 or more, or holds with a head
// across it that would drive water backwards. With the state of every valve
// given, the flows are unique, so the states can be sought by correction:
// first all wrong valves at once, which nearly always ends after a round or
// two; if that goes on too long, only the first wrong valve each round. The
// latter always ends (the least-index rule of Murty for complementarity
// problems, from memory: fixed order, unique answer for each choice).
const (
	roundsTogether = 12
	roundsMost     = 400
)

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
			l.held, l.q, l.h = true, 0, 0
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

package network

import "fmt"

// LinkResult is what Solve found for a link.
type LinkResult struct {
	Flow float64 // m3/s, positive from from to to
	Loss float64 // m, head lost in the direction of the link; below 0: head gained by a pump. 0 when not Open
	Open bool    // false: closed by SetOpen or held by its non-return valve
	Held bool    // held by its non-return valve
	// Reynolds is that of a pipe, 0 of other links. Between 2000 and 4000 no
	// published law holds and Loss is a bridge.
	Reynolds float64
	Outside  bool // the flow lies outside the points of the curve: Loss is extrapolated
}

// NodeResult is what Solve found for a node.
type NodeResult struct {
	Head   float64 // m; 0 when not Known
	Known  bool    // false: closed links cut the node off from every fixed head
	Supply float64 // m3/s that enter the network here: of a junction its demand with the other sign
}

// Link gives the result of a link after a Solve without error.
func (s *Solver) Link(l Link) LinkResult {
	k := &s.links[l]
	if k.shut || k.held {
		return LinkResult{Held: k.held && !k.shut}
	}
	return LinkResult{Flow: k.q, Loss: k.h, Open: true, Reynolds: k.reynolds * max(k.q, -k.q), Outside: s.outside(k)}
}

// Node gives the result of a node after a Solve without error.
func (s *Solver) Node(n Node) NodeResult {
	nd := &s.nodes[n]
	if nd.kind == junction {
		if !nd.known {
			return NodeResult{Supply: -nd.value}
		}
		return NodeResult{Head: s.head[nd.place] + s.datum, Known: true, Supply: -nd.value}
	}
	return NodeResult{Head: nd.value, Known: true, Supply: -s.surplus[nd.place]}
}

// Nodes counts the nodes added.
func (s *Solver) Nodes() int { return len(s.nodes) }

// Links counts the links added.
func (s *Solver) Links() int { return len(s.links) }

// RangeError says that a pipe's flow left the range of the friction law.
type RangeError struct {
	Link     Link
	Reynolds float64
}

func (e *RangeError) Error() string {
	return fmt.Sprintf("link %d: Reynolds number is %.3g; the friction law holds to %g", e.Link, e.Reynolds, mostReynolds)
}

// finish reckons what the fixed heads supply and checks the range of the
// friction law.
func (s *Solver) finish() error {
	clear(s.surplus)
	for i := range s.links {
		l := &s.links[i]
		if re := l.reynolds * max(l.q, -l.q); re > mostReynolds {
			return &RangeError{Link: Link(i), Reynolds: re}
		}
		s.surplus[l.at] -= l.q
		s.surplus[l.end] += l.q
	}
	return nil
}

package network

import (
	"errors"
	"fmt"
	"math"
)

// Errors of Solve that name no node.
var (
	ErrNoFixedHead  = errors.New("the network has no fixed head")
	ErrNotConverged = errors.New("the network did not converge")
)

// PathError says that a node has no path to a fixed head.
type PathError struct {
	Node   Node
	Closed bool // a path exists, but closed links or non-return valves block what the node draws or supplies
}

func (e *PathError) Error() string {
	if e.Closed {
		return fmt.Sprintf("node %d draws or supplies water, but closed links or non-return valves cut it off from every fixed head", e.Node)
	}
	return fmt.Sprintf("node %d has no path to a fixed head", e.Node)
}

// union holds the parts into which the network falls.
type union struct {
	parent []int32
	fed    []bool    // by root: the part has a fixed head
	drawn  []float64 // by root: sum of demands
	size   []float64 // by root: sum of demands without sign
	datum  []bool    // by root: a junction of the part is pinned
}

func (u *union) root(v int32) int32 {
	for u.parent[v] != v {
		u.parent[v] = u.parent[u.parent[v]]
		v = u.parent[v]
	}
	return v
}

// gather joins nodes over the links, all of them or only the open ones.
func (s *Solver) gather(all bool) {
	u, n := &s.union, len(s.nodes)
	u.parent, u.fed, u.datum = resize(u.parent, n), resize(u.fed, n), resize(u.datum, n)
	u.drawn, u.size = resize(u.drawn, n), resize(u.size, n)
	for i := range n {
		u.parent[i], u.fed[i], u.datum[i], u.drawn[i], u.size[i] = int32(i), false, false, 0, 0
	}
	for i := range s.links {
		l := &s.links[i]
		if all || !s.blocked(l) {
			a, b := u.root(l.from), u.root(l.to)
			if a != b {
				u.parent[max(a, b)] = min(a, b)
			}
		}
	}
	for i := range s.nodes {
		r := u.root(int32(i))
		if s.nodes[i].kind == fixedHead {
			u.fed[r] = true
			continue
		}
		u.drawn[r] += s.nodes[i].value
		u.size[r] += math.Abs(s.nodes[i].value)
	}
}

// arrange plans the elimination and checks that every node has a path to a
// fixed head when all links are open.
func (s *Solver) arrange() error {
	if s.fixed == 0 {
		return ErrNoFixedHead
	}
	s.gather(true)
	for i := range s.nodes {
		if !s.union.fed[s.union.root(int32(i))] {
			return &PathError{Node: Node(i)}
		}
	}
	m := &s.sparse
	m.begin(s.junctions)
	for i := range s.links {
		a, b := &s.nodes[s.links[i].from], &s.nodes[s.links[i].to]
		if a.kind == junction && b.kind == junction {
			m.join(a.number, b.number)
		}
	}
	m.order()
	for i := range s.nodes {
		nd := &s.nodes[i]
		if nd.kind == junction {
			nd.place = m.place[nd.number]
		} else {
			nd.place = int32(s.junctions) + nd.number
		}
	}
	for i := range s.links {
		l := &s.links[i]
		l.at, l.end, l.cross = s.nodes[l.from].place, s.nodes[l.to].place, -1
		if n := int32(s.junctions); l.at < n && l.end < n {
			l.cross = m.at(l.at, l.end)
		}
	}
	n := len(s.nodes)
	s.head, s.rise = resize(s.head, n), resize(s.rise, n)
	s.surplus, s.pinned = resize(s.surplus, n), resize(s.pinned, n)
	s.ordered, s.sorted, s.solved = true, false, false
	return nil
}

// sortParts finds the parts cut off by closed links. One that neither draws
// nor supplies water gets a head of its own choice at one node, so that a pump
// in it can still be solved; in one that does, non-return valves that could
// let the water through are opened.
func (s *Solver) sortParts() error {
	if s.sorted {
		return nil
	}
	for {
		s.gather(false)
		u := &s.union
		opened, lacking := false, int32(-1)
		for i := range s.nodes {
			r := u.root(int32(i))
			if u.fed[r] || math.Abs(u.drawn[r]) <= 1e-12*u.size[r] {
				continue
			}
			if lacking < 0 {
				lacking = int32(i)
			}
		}
		if lacking < 0 {
			break
		}
		for i := range s.links {
			l := &s.links[i]
			if !l.held || l.shut {
				continue
			}
			a, b := u.root(l.from), u.root(l.to)
			if a != b && (s.lacks(b, 1) || s.lacks(a, -1)) {
				l.held, l.q, opened = false, l.start, true
			}
		}
		if !opened {
			return &PathError{Node: Node(lacking), Closed: true}
		}
	}
	u := &s.union
	for i := range s.nodes {
		nd := &s.nodes[i]
		r := u.root(int32(i))
		nd.known = u.fed[r]
		s.pinned[nd.place] = nd.kind == junction && !u.fed[r] && !u.datum[r]
		if s.pinned[nd.place] {
			u.datum[r] = true
		}
	}
	s.sorted = true
	return nil
}

// lacks reports a cut-off part that draws (sign 1) or supplies (sign -1) water.
func (s *Solver) lacks(root int32, sign float64) bool {
	u := &s.union
	return !u.fed[root] && sign*u.drawn[root] > 1e-12*u.size[root]
}

// Package network solves a small network of water pipes, pumps, valves and
// apparatus for its steady flows and heads. It knows nothing of the plant
// language: the caller numbers nodes and links by adding them.
//
// Units are SI throughout: flow m3/s, head m of the flowing water, length,
// bore and roughness m, kinematic viscosity m2/s.
//
// Method: Newton steps on flows and heads together, the global gradient
// method (sources.go). Each step solves one symmetric system in the heads.
// Loss laws that rise with flow make the problem that of the least of a convex
// function, so a step that overshoots is cut back along its own line and the
// method converges from any start. Non-return valves are settled outside the
// Newton steps, see valves.go.
//
// A Solver is used again and again: Reset keeps its memory, and a Solve after
// a change of status, speed, demand or fixed head starts from the last answer.
package network

import (
	"errors"
	"fmt"
	"math"
)

// Gravity is the standard acceleration of free fall in m/s2.
const Gravity = 9.80665 // source: SourceGravity

// Node numbers a node in the order of adding, from 0.
type Node int

// Link numbers a link in the order of adding, from 0.
type Link int

// Point is one point of a pump or loss curve: flow in m3/s, head in m.
type Point struct {
	Flow, Head float64
}

// Pipe is a straight pipe with the losses of its fittings.
type Pipe struct {
	Length    float64 // m, above 0
	Bore      float64 // inner diameter, m, above 0
	Roughness float64 // m, 0 to 0.05 of the bore
	Loss      float64 // sum of loss coefficients on the pipe's own velocity head, 0 or more
	OneWay    bool    // a non-return valve in the pipe; its loss belongs in Loss
}

type nodeKind uint8

const (
	junction nodeKind = iota
	fixedHead
)

type node struct {
	kind   nodeKind
	known  bool    // the last Solve could tell the head
	value  float64 // demand in m3/s of a junction, head in m of a fixed head
	place  int32   // place in Solver.head: elimination order, fixed heads after
	number int32   // number among the junctions
}

type linkKind uint8

const (
	pipeLink linkKind = iota
	fittingLink
	lossLink
	pumpLink
)

type link struct {
	kind   linkKind
	oneWay bool
	shut   bool // closed by the caller
	held   bool // held closed by its non-return valve
	woken  bool // opened since the last Solve

	from, to   int32 // nodes
	at, end    int32 // places of from and to in Solver.head
	cross      int32 // entry of the matrix between both places, -1 if none
	first, num int32 // segments of the curve
	current    int32 // segment used last

	q      float64 // flow, m3/s
	h      float64 // head lost at q, m
	invert float64 // dq/dh at q
	step   float64 // Newton step of q
	base   float64 // flow before the step
	start  float64 // flow to start from, m3/s

	laminar  float64 // m per m3/s
	friction float64 // L/D/(2 g A2)
	minor    float64 // K/(2 g A2)
	reynolds float64 // Re per m3/s
	rough    float64 // relative roughness
	root     float64 // 1/sqrt(f) found last, 0: none
	edge     float64 // factor at the end of the bridge, 0: not yet computed

	small float64 // flow under which a square law is made linear at its foot, m3/s
	least float64 // least slope used in the Newton step of a curve, m per m3/s
	speed float64 // of a pump, 1: as its curve
}

// Solver holds a network and everything needed to solve it again without
// allocating. The zero value is not ready: use New or Reset. It is not safe
// for use by several goroutines at once.
type Solver struct {
	viscosity float64
	nodes     []node
	links     []link
	segments  []segment
	junctions int
	fixed     int

	ordered bool // the order of elimination fits the network
	sorted  bool // the parts cut off by closed links are known
	solved  bool // flows and heads are an answer to start from
	leaky   bool // held valves leak, see valves.go
	even    bool // the flows balance at every node
	steps   int  // Newton steps of the last Solve

	datum   float64   // fixed head subtracted from all heads while solving
	head    []float64 // by place, less datum
	rise    []float64 // by place: Newton step of the heads, 0 for fixed heads
	surplus []float64 // by place: what flows in less what flows out and is drawn
	pinned  []bool    // by place: head chosen freely, the part has no fixed head

	sparse matrix
	union  union
}

// New returns a Solver for water of that kinematic viscosity in m2/s.
func New(viscosity float64) (*Solver, error) {
	s := &Solver{}
	if err := s.Reset(viscosity); err != nil {
		return nil, err
	}
	return s, nil
}

// Reset empties the network but keeps its memory. viscosity is the kinematic
// viscosity of the water in m2/s, above 1e-8 and under 1e-3.
func (s *Solver) Reset(viscosity float64) error {
	if !(viscosity > 1e-8 && viscosity < 1e-3) {
		return fmt.Errorf("viscosity is %g m2/s; the method holds from 1e-8 to 1e-3 m2/s", viscosity)
	}
	s.viscosity = viscosity
	s.nodes, s.links, s.segments = s.nodes[:0], s.links[:0], s.segments[:0]
	s.junctions, s.fixed, s.steps = 0, 0, 0
	s.ordered, s.sorted, s.solved = false, false, false
	return nil
}

// AddJunction adds a node from which demand m3/s are drawn; a negative demand
// is water supplied.
func (s *Solver) AddJunction(demand float64) (Node, error) {
	if !finite(demand) {
		return 0, errors.New("the demand of a junction is not a number")
	}
	s.nodes = append(s.nodes, node{kind: junction, value: demand, number: int32(s.junctions)})
	s.junctions++
	s.ordered = false
	return Node(len(s.nodes) - 1), nil
}

// AddFixed adds a node whose head in m is given.
func (s *Solver) AddFixed(head float64) (Node, error) {
	if !finite(head) {
		return 0, errors.New("the head of a fixed head is not a number")
	}
	s.nodes = append(s.nodes, node{kind: fixedHead, value: head, number: int32(s.fixed)})
	s.fixed++
	s.ordered = false
	return Node(len(s.nodes) - 1), nil
}

// AddPipe adds a pipe; flow is positive from from to to.
func (s *Solver) AddPipe(from, to Node, p Pipe) (Link, error) {
	switch {
	case !(p.Length > 0) || !finite(p.Length):
		return 0, fmt.Errorf("length is %g m; it must be above 0 m", p.Length)
	case !(p.Bore > 0) || !finite(p.Bore):
		return 0, fmt.Errorf("bore is %g m; it must be above 0 m", p.Bore)
	case !(p.Roughness >= 0 && p.Roughness <= roughest*p.Bore):
		return 0, fmt.Errorf("roughness is %g m; the friction law holds from 0 to %g of the bore, %g m", p.Roughness, roughest, roughest*p.Bore)
	case !(p.Loss >= 0) || !finite(p.Loss):
		return 0, fmt.Errorf("loss coefficient is %g; it must be 0 or more", p.Loss)
	}
	area := math.Pi / 4 * p.Bore * p.Bore
	l := link{kind: pipeLink, oneWay: p.OneWay}
	l.friction = p.Length / p.Bore / (2 * Gravity * area * area)
	l.minor = p.Loss / (2 * Gravity * area * area)
	l.reynolds = p.Bore / (area * s.viscosity)
	l.laminar = 64 / l.reynolds * l.friction
	l.rough = p.Roughness / p.Bore
	l.start = startVelocity * area
	return s.add(from, to, l)
}

// AddFitting adds a loss coefficient (above 0) without length, on the velocity
// head in bore m. oneWay makes it a non-return valve that opens from from to to.
func (s *Solver) AddFitting(from, to Node, bore, loss float64, oneWay bool) (Link, error) {
	switch {
	case !(bore > 0) || !finite(bore):
		return 0, fmt.Errorf("bore is %g m; it must be above 0 m", bore)
	case !(loss > 0) || !finite(loss):
		return 0, fmt.Errorf("loss coefficient is %g; a fitting without length needs one above 0", loss)
	}
	area := math.Pi / 4 * bore * bore
	return s.add(from, to, link{
		kind: fittingLink, oneWay: oneWay,
		minor: loss / (2 * Gravity * area * area),
		small: footVelocity * area,
		start: startVelocity * area,
	})
}

// AddLoss adds an apparatus (a unit, an exchanger) that loses points[i].Head m
// at points[i].Flow m3/s, the same both ways. Flows and heads must be above 0
// and rise. One point means a loss that goes with the square of the flow;
// between points the loss is a + b q2 through both neighbors. A flow beyond the
// last point is flagged in LinkResult.Outside.
func (s *Solver) AddLoss(from, to Node, points []Point, oneWay bool) (Link, error) {
	first := len(s.segments)
	small, err := s.lossCurve(points)
	if err != nil {
		s.segments = s.segments[:first]
		return 0, err
	}
	return s.add(from, to, link{
		kind: lossLink, oneWay: oneWay, speed: 1,
		first: int32(first), num: int32(len(s.segments) - first), current: int32(first),
		small: small,
		start: points[len(points)-1].Flow / 2,
	})
}

// AddPump adds a pump that lifts the water from from to to. One point
// (q0, h0) means H = 4/3 h0 - h0/3 (q/q0)2. Several points, flows rising from
// 0 or more and heads never rising, are joined by parabolas a - b q2, each
// through two neighbors. A flow outside the points (for one point: outside 0
// to 2 q0) is flagged in LinkResult.Outside. oneWay adds a non-return valve
// without loss.
func (s *Solver) AddPump(from, to Node, points []Point, oneWay bool) (Link, error) {
	first := len(s.segments)
	small, err := s.pumpCurve(points)
	if err != nil {
		s.segments = s.segments[:first]
		return 0, err
	}
	last := points[len(points)-1]
	start := last.Flow
	if len(points) > 1 {
		start = last.Flow / 2
	}
	return s.add(from, to, link{
		kind: pumpLink, oneWay: oneWay, speed: 1,
		first: int32(first), num: int32(len(s.segments) - first), current: int32(first),
		small: small,
		least: 1e-4 * math.Max(points[0].Head, 1e-3) / last.Flow,
		start: start,
	})
}

func (s *Solver) add(from, to Node, l link) (Link, error) {
	if from < 0 || to < 0 || int(from) >= len(s.nodes) || int(to) >= len(s.nodes) {
		return 0, fmt.Errorf("link from node %d to node %d: there are nodes 0 to %d", from, to, len(s.nodes)-1)
	}
	if from == to {
		return 0, fmt.Errorf("link from node %d to itself", from)
	}
	l.from, l.to = int32(from), int32(to)
	s.links = append(s.links, l)
	s.ordered = false
	return Link(len(s.links) - 1), nil
}

// SetOpen opens or closes a link: a pump switched off behind a non-return
// valve, or an isolating valve.
func (s *Solver) SetOpen(l Link, open bool) {
	k := &s.links[l]
	if k.shut != open {
		return
	}
	k.shut, k.woken, k.held = !open, open, false
	s.sorted = false
}

// SetSpeed sets the speed of a pump as a part of that of its curve, above 0 to
// 2: H = n2 H(q/n), the affinity law.
func (s *Solver) SetSpeed(l Link, speed float64) error {
	k := &s.links[l]
	if k.kind != pumpLink {
		return fmt.Errorf("link %d is not a pump and has no speed", l)
	}
	if !(speed > 0 && speed <= 2) {
		return fmt.Errorf("speed is %g of the curve's; the affinity law is used above 0 to 2", speed)
	}
	k.speed = speed
	return nil
}

// SetDemand changes the demand of a junction in m3/s.
func (s *Solver) SetDemand(n Node, demand float64) error {
	if s.nodes[n].kind != junction || !finite(demand) {
		return fmt.Errorf("node %d: a demand is a number and belongs to a junction", n)
	}
	s.nodes[n].value = demand
	s.sorted = false
	return nil
}

// SetHead changes the head of a fixed head in m.
func (s *Solver) SetHead(n Node, head float64) error {
	if s.nodes[n].kind != fixedHead || !finite(head) {
		return fmt.Errorf("node %d: a given head is a number and belongs to a fixed head", n)
	}
	s.nodes[n].value = head
	return nil
}

// Cold forgets the last answer: the next Solve starts from fixed velocities.
func (s *Solver) Cold() { s.solved = false }

// Head converts a pressure in Pa to m of water of that density in kg/m3:
// h = p/(rho g). Density must be above 0.
func Head(pressure, density float64) float64 { return pressure / (density * Gravity) }

// Pressure converts m of water of that density in kg/m3 to Pa: p = rho g h.
func Pressure(head, density float64) float64 { return head * density * Gravity }

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

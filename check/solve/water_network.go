package solve

import (
	"math"
	"slices"
	"sync"

	"example.org/tundish/check/calc/friction"
	"example.org/tundish/check/calc/network"
	"example.org/tundish/lang"
)

// network solves the circuits with the pumps at their setting: all units, each
// alone, and all but the largest.
func (h *hydraulics) network() {
	group := h.c.P.UnitGroup()
	if lack := h.networkLacks(); lack != "" {
		for i := range h.units {
			h.c.Missing(h.units[i].unit, "flow", Plain, AllFull, lack)
		}
		h.c.Missing(group, "flow", Least, AllFull, lack)
		h.c.Missing(group, "flow", Most, AllFull, lack)
		h.c.Missing(group, "flow", Mean, AllFull, lack)
		h.c.Missing(group, "flow-balance", Plain, AllFull, lack)
		return
	}
	flows, err := h.solve()
	if err != nil {
		h.c.Missing(group, "flow-balance", Plain, AllFull, "a water network that can be solved: "+err.Error())
		return
	}
	h.flows = flows
	h.running(flows, group)
}

// unitFlows are what the network gives: flows through the units in m3/s with all
// running, of each alone, and with the largest off; and the pressure in Pa between
// the take-offs of each unit with all running. Not a number: no answer.
type unitFlows struct {
	all, alone, oneOff, across []float64
	largest                    int
}

// builders keeps solvers with their memory from one plant to the next.
var builders = sync.Pool{New: func() any { return &builder{s: &network.Solver{}} }}

// solve gives the flows of the network. An editor asks for the same network with
// each key that is typed elsewhere, so answers are remembered by everything that
// went into the network.
func (h *hydraulics) solve() (*unitFlows, error) {
	b := builders.Get().(*builder)
	defer builders.Put(b)
	b.rho, b.h, b.err, b.key = h.state.Density, h, nil, b.key[:0]
	defer func() { b.h = nil }()
	if err := b.build(); err != nil {
		return nil, err
	}
	if f := networks.get(b.key); f != nil {
		return f, nil
	}
	if err := b.s.Solve(); err != nil {
		return nil, err
	}
	n := len(h.units)
	store := make([]float64, 4*n)
	f := &unitFlows{all: store[:n:n], alone: store[n : 2*n : 2*n], oneOff: store[2*n : 3*n : 3*n], across: store[3*n:]}
	for i := range h.units {
		f.all[i] = b.s.Link(h.units[i].flowLink).Flow
		f.across[i] = network.Pressure(b.s.Node(b.flowNode[i]).Head-b.s.Node(b.retNode[i]).Head, b.rho)
		if h.units[i].design > h.units[f.largest].design {
			f.largest = i
		}
	}
	b.alone(f.alone)
	if n > 1 {
		b.s.SetOpen(h.units[f.largest].returnPump, false)
		ok := b.s.Solve() == nil
		for k := range h.units {
			f.oneOff[k] = math.NaN()
			if ok && k != f.largest {
				f.oneOff[k] = b.s.Link(h.units[k].flowLink).Flow
			}
		}
	}
	networks.put(append([]float64(nil), b.key...), f)
	return f, nil
}

func (h *hydraulics) networkLacks() string {
	if h.missing != "" {
		return h.missing
	}
	if h.flow == nil || h.ret == nil {
		return "both headers"
	}
	if h.flowHead.missing != "" {
		return h.flowHead.missing
	}
	if h.retHead.missing != "" {
		return h.retHead.missing
	}
	for i := range h.units {
		u := &h.units[i]
		switch {
		case u.out.missing != "":
			return u.out.missing
		case u.in.missing != "":
			return u.in.missing
		case len(u.loss.flow) == 0:
			return "the water loss curve of " + u.unit.Label()
		case len(u.head.flow) < 2:
			return "the head curve of the pump of " + u.unit.Label()
		}
	}
	for _, list := range [][]waterPipe{h.flowRun, h.retRun} {
		for i := range list {
			if list[i].missing != "" {
				return list[i].missing
			}
		}
	}
	return ""
}

// build lays the network out: the separation is the point of fixed head, the
// exchanger's primary side a loss before it.
func (b *builder) build() error {
	h := b.h
	if err := b.s.Reset(h.state.Viscosity / b.rho); err != nil {
		return err
	}
	b.note(h.state.Viscosity, b.rho)
	fixed := b.fixed(10)
	n := len(h.units)
	b.flowNode, b.retNode = append(b.flowNode[:0], make([]network.Node, n)...), append(b.retNode[:0], make([]network.Node, n)...)
	// Return side: from the fixed head through the return pipes to the first
	// take-off, then along the header.
	at := fixed
	if h.sep != nil && h.sep.Kind == "exchanger" {
		if c := h.curve(h.sep.Child("primary-loss-curve")); len(c.flow) > 0 {
			to := b.junction()
			b.loss(at, to, c)
			at = to
		}
	}
	for i := range h.retRun {
		at = b.pipe(at, b.junction(), &h.retRun[i], false)
	}
	at = b.header(at, &h.retHead, h.retOrder, b.retNode, true)
	// Flow side.
	at = b.header(at, &h.flowHead, h.order, b.flowNode, false)
	for i := range h.flowRun {
		to := fixed
		if i < len(h.flowRun)-1 {
			to = b.junction()
		}
		at = b.pipe(at, to, &h.flowRun[i], false)
	}
	if len(h.flowRun) == 0 {
		_, err := b.s.AddFitting(at, fixed, h.flowHead.bore, kExitHeader, false)
		b.keep(err)
		b.noteEnds(2, at, fixed)
		b.note(h.flowHead.bore)
	}
	for i := range h.units {
		u := &h.units[i]
		m1, m2, m3 := b.junction(), b.junction(), b.junction()
		b.pipe(b.retNode[i], m1, &u.in, false)
		b.loss(m1, m2, u.loss)
		u.returnPump = b.pump(m2, m3, u)
		u.flowLink = network.Link(b.s.Links())
		b.pipe(m3, b.flowNode[i], &u.out, u.oneWay)
		b.note(u.design) // says which unit is the largest
	}
	return b.err
}

// builder adds parts to a solver, notes everything that it adds, and remembers
// the first error.
type builder struct {
	s                 *network.Solver
	rho               float64
	h                 *hydraulics
	flowNode, retNode []network.Node
	key               []float64
	err               error
}

func (b *builder) note(v ...float64) { b.key = append(b.key, v...) }

func (b *builder) noteEnds(kind float64, from, to network.Node) {
	b.note(kind, float64(from), float64(to))
}

func (b *builder) keep(err error) {
	if b.err == nil {
		b.err = err
	}
}

func (b *builder) fixed(head float64) network.Node {
	n, err := b.s.AddFixed(head)
	b.keep(err)
	return n
}

func (b *builder) junction() network.Node {
	n, err := b.s.AddJunction(0)
	b.keep(err)
	return n
}

func (b *builder) pipe(from, to network.Node, w *waterPipe, oneWay bool) network.Node {
	_, err := b.s.AddPipe(from, to, network.Pipe{Length: max(w.length, 0.01), Bore: w.bore, Roughness: w.roughness, Loss: w.k, OneWay: oneWay})
	b.keep(err)
	b.noteEnds(1, from, to)
	if oneWay {
		b.note(1)
	}
	b.note(w.length, w.bore, w.roughness, w.k)
	return to
}

// header adds a header from take-off to take-off and notes their nodes. The
// return header starts at the node given; the flow header ends at the node it
// returns.
func (b *builder) header(at network.Node, w *waterPipe, order []int, nodes []network.Node, isReturn bool) network.Node {
	for k, i := range order {
		switch {
		case k == 0 && isReturn:
			nodes[i] = at
		case k == 0:
			nodes[i] = b.junction()
			at = nodes[i]
		default:
			nodes[i] = b.junction()
			at = b.pipe(at, nodes[i], w, false)
		}
	}
	return at
}

func (b *builder) loss(from, to network.Node, c *curvePoints) {
	_, err := b.s.AddLoss(from, to, c.heads(b.rho), false)
	b.keep(err)
	b.noteEnds(3, from, to)
	b.note(c.flow...)
	b.note(c.pa...)
}

func (b *builder) pump(from, to network.Node, u *circuit) network.Link {
	l, err := b.s.AddPump(from, to, u.head.heads(b.rho), false)
	b.keep(err)
	b.noteEnds(4, from, to)
	b.note(u.setting)
	b.note(u.head.flow...)
	b.note(u.head.pa...)
	if err == nil && u.setting != 1 {
		b.keep(b.s.SetSpeed(l, u.setting))
	}
	return l
}

// alone finds the flow of each unit with all others off. What is left of the
// network is one line, so the head of the pump and the losses along the line are
// brought together directly.
func (b *builder) alone(out []float64) {
	h := b.h
	for i := range h.units {
		out[i] = math.NaN()
		u := &h.units[i]
		q := u.head.flow[len(u.head.flow)-1] * u.setting / 2
		flowSegments, retSegments := float64(len(h.order)-1-slices.Index(h.order, i)), float64(slices.Index(h.retOrder, i))
		for range 60 {
			pa := h.flowHead.only(q, flowSegments, &h.state) + h.retHead.only(q, retSegments, &h.state) +
				u.in.only(q, 1, &h.state) + u.out.only(q, 1, &h.state) + u.loss.lost(q)
			for k := range h.flowRun {
				pa += h.flowRun[k].only(q, 1, &h.state)
			}
			for k := range h.retRun {
				pa += h.retRun[k].only(q, 1, &h.state)
			}
			if len(h.flowRun) == 0 {
				v := friction.Velocity(q, h.flowHead.bore)
				pa += kExitHeader * h.state.Density * v * v / 2
			}
			if h.sep != nil && h.sep.Kind == "exchanger" {
				if c := h.curve(h.sep.Child("primary-loss-curve")); len(c.flow) > 0 {
					pa += c.lost(q)
				}
			}
			next := u.head.meets(pa/(q*q), u.setting)
			if math.Abs(next-q) <= 1e-10*q {
				out[i] = next
				break
			}
			q = next
		}
	}
}

func (h *hydraulics) inputs(u *circuit) []Input {
	return h.c.Inputs(Input{Name: "pump setting", Num: u.setting, Dim: lang.Ratio, Unit: "%"}, Input{Name: "design flow", Num: u.design, Dim: lang.VolumeFlow, Unit: flowUnit(h.c.P)})
}

// FormulaBalance compares the unit with the least and the most water.
var FormulaBalance = Formula{Text: "balance = least flow / most flow over all units, from the solved network", Source: FormulaNetwork.Source}

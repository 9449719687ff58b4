package solve

import (
	"math"

	"example.org/tundish/check/calc/network"
	"example.org/tundish/check/plant"
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
	h.allRunning(flows, group)
	h.oneRunning(flows)
	h.allButLargest(flows, group)
}

// unitFlows are the flows through the units in m3/s: with all running, of each
// alone, and of the sum with the largest off. Not a number: no answer.
type unitFlows struct {
	all, alone []float64
	oneOff     float64
}

// solve gives the flows of the network. An editor asks for the same network with
// each key that is typed elsewhere, so answers are remembered by everything that
// went into the network.
func (h *hydraulics) solve() (*unitFlows, error) {
	b := &builder{rho: h.state.Density, h: h}
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
	f := &unitFlows{all: make([]float64, n), alone: make([]float64, n), oneOff: math.NaN()}
	largest := 0
	for i := range h.units {
		f.all[i] = b.s.Link(h.units[i].flowLink).Flow
		if h.units[i].design > h.units[largest].design {
			largest = i
		}
	}
	for i := range h.units {
		f.alone[i] = math.NaN()
		for k := range h.units {
			b.s.SetOpen(h.units[k].returnPump, k == i)
		}
		if b.s.Solve() == nil {
			f.alone[i] = b.s.Link(h.units[i].flowLink).Flow
		}
	}
	if n > 1 {
		for k := range h.units {
			b.s.SetOpen(h.units[k].returnPump, k != largest)
		}
		if b.s.Solve() == nil {
			f.oneOff = 0
			for k := range h.units {
				if k != largest {
					f.oneOff += b.s.Link(h.units[k].flowLink).Flow
				}
			}
		}
	}
	networks.put(b.key, f)
	return f, nil
}

func (h *hydraulics) networkLacks() string {
	if h.missing != "" {
		return h.missing
	}
	if h.flow == nil || h.ret == nil {
		return "both headers"
	}
	for _, hd := range [...]*plant.Part{h.flow, h.ret} {
		length, _ := segments(hd, len(h.units))
		if w := newWaterPipe(hd, length); w.missing != "" {
			return w.missing
		}
	}
	for i := range h.units {
		u := &h.units[i]
		switch {
		case u.out.missing != "":
			return u.out.missing
		case u.in.missing != "":
			return u.in.missing
		case len(u.lossFlow) == 0:
			return "the water loss curve of " + u.unit.Label()
		case len(u.pumpFlow) < 2:
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
	var err error
	if b.s, err = network.New(h.state.Viscosity / b.rho); err != nil {
		return err
	}
	b.note(h.state.Viscosity, b.rho)
	fixed := b.fixed(10)
	n := len(h.units)
	flowNode, retNode := make([]network.Node, n), make([]network.Node, n)
	// Return side: from the fixed head through the return pipes to the first
	// take-off, then along the header.
	at := fixed
	if h.sep != nil && h.sep.Kind == "exchanger" {
		at = b.apparatus(at, h.sep.Child("primary-loss-curve"))
	}
	for i := range h.retRun {
		at = b.pipe(at, b.junction(), &h.retRun[i], false)
	}
	at = b.header(at, h.ret, h.retOrder, retNode, true)
	// Flow side.
	at = b.header(at, h.flow, h.order, flowNode, false)
	for i := range h.flowRun {
		to := fixed
		if i < len(h.flowRun)-1 {
			to = b.junction()
		}
		at = b.pipe(at, to, &h.flowRun[i], false)
	}
	if len(h.flowRun) == 0 {
		b.fitting(at, fixed, h.flow)
	}
	for i := range h.units {
		u := &h.units[i]
		m1, m2, m3 := b.junction(), b.junction(), b.junction()
		b.pipe(retNode[i], m1, &u.in, false)
		b.loss(m1, m2, u.lossFlow, u.lossPa)
		u.returnPump = b.pump(m2, m3, u)
		u.flowLink = network.Link(b.s.Links())
		b.pipe(m3, flowNode[i], &u.out, u.oneWay)
		b.note(u.design) // says which unit is the largest
	}
	return b.err
}

// builder adds parts to a solver, notes everything that it adds, and remembers
// the first error.
type builder struct {
	s   *network.Solver
	rho float64
	h   *hydraulics
	key []float64
	err error
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
	k := w.k
	if w.stated > 0 { // a loss stated at design flow becomes a coefficient
		flow := 0.0
		for i := range b.h.units {
			flow += b.h.units[i].design
		}
		if v := flow / (math.Pi / 4 * w.bore * w.bore); v > 0 {
			k += 2 * w.stated / (b.rho * v * v)
		}
	}
	_, err := b.s.AddPipe(from, to, network.Pipe{Length: max(w.length, 0.01), Bore: w.bore, Roughness: w.roughness, Loss: k, OneWay: oneWay})
	b.keep(err)
	b.noteEnds(1, from, to)
	if oneWay {
		b.note(1)
	}
	b.note(w.length, w.bore, w.roughness, k)
	return to
}

func (b *builder) fitting(from, to network.Node, header *plant.Part) {
	length, _ := segments(header, len(b.h.units))
	w := newWaterPipe(header, length)
	_, err := b.s.AddFitting(from, to, w.bore, kExitHeader, false)
	b.keep(err)
	b.noteEnds(2, from, to)
	b.note(w.bore)
}

// header adds a header from take-off to take-off and notes their nodes. The
// return header starts at the node given; the flow header ends at the node it
// returns.
func (b *builder) header(at network.Node, part *plant.Part, order []int, nodes []network.Node, isReturn bool) network.Node {
	length, share := segments(part, len(order))
	w := newWaterPipe(part, length)
	w.length, w.k = share, headerTee(part)
	for k, i := range order {
		switch {
		case k == 0 && isReturn:
			nodes[i] = at
		case k == 0:
			nodes[i] = b.junction()
			at = nodes[i]
		default:
			nodes[i] = b.junction()
			at = b.pipe(at, nodes[i], &w, false)
		}
	}
	return at
}

func (b *builder) points(flows, pa []float64) []network.Point {
	out := make([]network.Point, len(flows))
	for i := range flows {
		out[i] = network.Point{Flow: flows[i], Head: network.Head(pa[i], b.rho)}
	}
	return out
}

func (b *builder) loss(from, to network.Node, flows, pa []float64) {
	_, err := b.s.AddLoss(from, to, b.points(flows, pa), false)
	b.keep(err)
	b.noteEnds(3, from, to)
	b.note(flows...)
	b.note(pa...)
}

func (b *builder) apparatus(at network.Node, block *plant.Part) network.Node {
	flows, pa := curve(block)
	if len(flows) == 0 {
		return at
	}
	to := b.junction()
	b.loss(at, to, flows, pa)
	return to
}

func (b *builder) pump(from, to network.Node, u *circuit) network.Link {
	l, err := b.s.AddPump(from, to, b.points(u.pumpFlow, u.pumpHead), false)
	b.keep(err)
	b.noteEnds(4, from, to)
	b.note(u.setting)
	b.note(u.pumpFlow...)
	b.note(u.pumpHead...)
	if err == nil && u.setting != 1 {
		b.keep(b.s.SetSpeed(l, u.setting))
	}
	return l
}

func (h *hydraulics) inputs(u *circuit) []Input {
	return h.c.Inputs(Input{Name: "pump setting", Num: u.setting, Dim: lang.Ratio, Unit: "%"}, Input{Name: "design flow", Num: u.design, Dim: lang.VolumeFlow, Unit: flowUnit(h.c.P)})
}

func (h *hydraulics) allRunning(f *unitFlows, group *plant.Part) {
	least, most, sum := math.Inf(1), 0.0, 0.0
	unit := flowUnit(h.c.P)
	for i := range h.units {
		u := &h.units[i]
		q := f.all[i]
		least, most, sum = min(least, q), max(most, q), sum+q
		h.c.Add(Quantity{Part: u.unit, Name: "flow", Case: AllFull, Num: q, Dim: lang.VolumeFlow, Unit: unit, Formula: &FormulaNetwork, Inputs: h.inputs(u), At: u.pump.Span()})
	}
	n := float64(len(h.units))
	add := func(stat Stat, v float64) {
		h.c.Add(Quantity{Part: group, Name: "flow", Stat: stat, Case: AllFull, Num: v, Dim: lang.VolumeFlow, Unit: unit, Formula: &FormulaNetwork})
	}
	add(Least, least)
	add(Most, most)
	add(Mean, sum/n)
	add(Total, sum)
	add(Spread, most-least)
	h.c.Add(Quantity{
		Part: group, Name: "flow-balance", Case: AllFull, Num: least / most, Dim: lang.Ratio, Unit: "%", Formula: &FormulaBalance,
		Inputs: h.c.Inputs(Input{Name: "least", Num: least, Dim: lang.VolumeFlow, Unit: unit}, Input{Name: "most", Num: most, Dim: lang.VolumeFlow, Unit: unit}),
	})
}

// FormulaBalance compares the unit with the least and the most water.
var FormulaBalance = Formula{Text: "balance = least flow / most flow over all units, from the solved network", Source: FormulaNetwork.Source}

func (h *hydraulics) oneRunning(f *unitFlows) {
	for i := range h.units {
		u := &h.units[i]
		if math.IsNaN(f.alone[i]) {
			h.c.Missing(u.unit, "flow", Plain, OneAlone, "a water network that can be solved with "+u.unit.Label()+" alone")
			continue
		}
		h.c.Add(Quantity{Part: u.unit, Name: "flow", Case: OneAlone, Num: f.alone[i], Dim: lang.VolumeFlow, Unit: flowUnit(h.c.P), Formula: &FormulaNetwork, Inputs: h.inputs(u), At: u.pump.Span()})
	}
}

func (h *hydraulics) allButLargest(f *unitFlows, group *plant.Part) {
	switch {
	case len(h.units) < 2:
	case math.IsNaN(f.oneOff):
		h.c.Missing(group, "flow", Total, OneOff, "a water network that can be solved with the largest unit off")
	default:
		h.c.Add(Quantity{Part: group, Name: "flow", Stat: Total, Case: OneOff, Num: f.oneOff, Dim: lang.VolumeFlow, Unit: flowUnit(h.c.P), Formula: &FormulaNetwork})
	}
}

package solve

import (
	"example.org/tundish/check/calc/friction"
	"example.org/tundish/check/calc/water"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var sourceBalance = cite.Source{Work: "heat balance of the water", Read: cite.Memory, Note: "physics; properties by IAPWS-IF97"}

// Formulas of the circuits behind the separation.
var (
	FormulaCircuitHeat = Formula{Text: "heat = sum of V rho cp (t_flow - t_return) over the circuits", Source: sourceBalance}
	FormulaPipeFlow    = Formula{Text: "v = V/(pi/4 D^2), V the design flow of the circuits that the pipe serves", Source: friction.SourceDarcy}
	FormulaDuty        = Formula{Text: "margin = head of the pump at the circuits' design flow - circuit, pipe and exchanger", Source: friction.SourceDarcy}
	FormulaLeft        = Formula{Text: "flow left when every valve that may close is shut = flow of the circuits with a bypass or without such valves", Source: cite.Source{Work: "continuity of the water", Read: cite.Memory, Note: "physics"}}
)

// buildingSide is the water behind the separation.
type buildingSide struct {
	block    *plant.Part
	circuits []*plant.Part
	state    water.State
	flow     float64 // m3/s, design
	supply   float64 // degC, the hottest circuit
	ret      float64 // degC, mixed
	heat     float64 // W at design temperatures
	missing  string
}

// solveBuilding reads the circuits and computes their pipes and pumps.
func (h *hydraulics) solveBuilding() *buildingSide {
	b := &buildingSide{block: h.c.P.Block("secondary")}
	b.circuits = b.block.Children("circuit")
	basis := h.c.P.Block("basis").Get("secondary")
	switch {
	case h.c.P.Damaged("secondary"):
		b.missing = "a file that can be read whole"
	case len(b.circuits) == 0:
		b.missing = "the circuits behind the separation"
	}
	mean := 0.0
	for _, c := range b.circuits {
		q, t := c.Get("flow"), c.Get("temperatures")
		if !t.Known() {
			t = basis
		}
		switch {
		case !q.Known() || q.Num <= 0:
			b.missing = "the flow of " + c.Label()
			continue
		case !t.Known():
			b.missing = "the temperatures of " + c.Label()
			continue
		}
		b.flow += q.Num
		b.ret += q.Num * t.Num2
		mean += q.Num * (t.Num + t.Num2) / 2
		b.heat += q.Num * (t.Num - t.Num2)
		b.supply = max(b.supply, t.Num)
	}
	if b.missing == "" {
		b.ret /= b.flow
		s, err := mediumAt(h.c.P, mean/b.flow, "secondary")
		if err != nil {
			b.missing = err.Error()
		}
		b.state = s
		b.heat *= s.Density * s.SpecificHeat
	}
	if b.block == nil {
		return b
	}
	if b.missing != "" {
		h.c.Missing(b.block, "heat", Plain, Always, b.missing)
		h.c.Missing(b.block, "flow", Total, Always, b.missing)
	} else {
		in := h.c.Inputs(Input{Name: "V", Num: b.flow, Dim: lang.VolumeFlow, Unit: flowUnit(h.c.P)}, Input{Name: "t_return mixed", Num: b.ret, Dim: lang.Temperature}, Input{Name: "rho", Num: b.state.Density, Dim: lang.Density}, Input{Name: "cp", Num: b.state.SpecificHeat, Dim: lang.SpecificHeat})
		h.c.Add(Quantity{Part: b.block, Name: "heat", Num: b.heat, Dim: lang.Power, Formula: &FormulaCircuitHeat, Inputs: in})
		h.c.Add(Quantity{Part: b.block, Name: "flow", Stat: Total, Num: b.flow, Dim: lang.VolumeFlow, Unit: flowUnit(h.c.P), Formula: &FormulaCircuitHeat, Inputs: in})
	}
	h.unseparated(b)
	for _, p := range b.block.Children("pipe") {
		h.buildingPipe(b, p)
	}
	for _, p := range b.block.Children("plant-pump") {
		h.buildingPump(b, p)
	}
	return b
}

// mayClose tells a circuit that may take no water at all.
func mayClose(circuit *plant.Part) bool {
	return (circuit.Has("closing-valves") || circuit.Get("control").Is("throttled")) && !circuit.Has("bypass")
}

// unseparated stores what still flows through the units when every valve of the
// circuits is shut that may close, where nothing separates units and circuits.
func (h *hydraulics) unseparated(b *buildingSide) {
	sep := h.c.P.Block("separation")
	if sep.Child("separator") != nil || sep.Child("exchanger") != nil || h.c.P.Damaged("separation") || !h.joined(b) {
		return
	}
	group := h.c.P.UnitGroup()
	if b.missing != "" {
		h.c.Missing(group, "flow-left", Plain, ValvesShut, b.missing)
		return
	}
	left := 0.0
	for _, c := range b.circuits {
		if !mayClose(c) {
			left += c.Get("flow").Num
		}
	}
	h.c.Add(Quantity{Part: group, Name: "flow-left", Case: ValvesShut, Num: left, Dim: lang.VolumeFlow, Unit: flowUnit(h.c.P), Formula: &FormulaLeft, Inputs: h.c.Inputs(Input{Name: "all circuits", Num: b.flow, Dim: lang.VolumeFlow, Unit: flowUnit(h.c.P)})})
}

// joined tells whether a pipe leads from the headers to the circuits straight.
func (h *hydraulics) joined(b *buildingSide) bool {
	for _, p := range h.block.Parts {
		for _, r := range p.Refs("to") {
			if r.Part.Owner == b.block {
				return true
			}
		}
	}
	for _, p := range b.block.Parts {
		for _, r := range p.Refs("from") {
			if r.Part.Owner == h.block {
				return true
			}
		}
	}
	return false
}

// served adds the circuits that a pipe feeds or takes back, through further pipes.
func (b *buildingSide) served(p *plant.Part, depth int, out []*plant.Part) []*plant.Part {
	if depth > 8 {
		return out
	}
	for _, slot := range [...]string{"to", "from"} {
		before := len(out)
		for _, r := range p.Refs(slot) {
			switch {
			case r.Part.Kind == "circuit":
				out = append(out, r.Part)
			case r.Part.Kind == "pipe" && slot == "to":
				out = b.served(r.Part, depth+1, out)
			}
		}
		if len(out) > before {
			break
		}
	}
	return out
}

// flowOf sums the design flows; 0 when one is not known.
func flowOf(circuits []*plant.Part) (sum float64) {
	for _, c := range circuits {
		q := c.Get("flow")
		if !q.Known() {
			return 0
		}
		sum += q.Num
	}
	return sum
}

// buildingPipe stores velocity, gradient and loss of a pipe behind the separation.
func (h *hydraulics) buildingPipe(b *buildingSide, p *plant.Part) {
	w := h.parts.newWaterPipe(p, p.Get("length"))
	var room [8]*plant.Part
	flow := flowOf(b.served(p, 0, room[:0]))
	switch {
	case w.missing != "":
	case b.missing != "":
		w.missing = b.missing
	case flow == 0:
		w.missing = "the circuits that " + p.Label() + " serves, with their flows"
	}
	if w.missing != "" {
		for _, name := range [...]string{"velocity", "gradient", "pressure-loss"} {
			h.c.Missing(p, name, Plain, Always, w.missing)
		}
		return
	}
	pa, v, g := w.loss(flow, &b.state)
	in := w.inputs(h.c, flow, v, g, &b.state)
	h.c.Add(Quantity{Part: p, Name: "velocity", Num: v, Dim: lang.Velocity, Unit: "m/s", Formula: &FormulaPipeFlow, Inputs: in})
	h.c.Add(Quantity{Part: p, Name: "gradient", Num: g, Dim: lang.PressureGrad, Unit: "Pa/m", Formula: &FormulaWaterLoss, Inputs: in})
	h.c.Add(Quantity{Part: p, Name: "pressure-loss", Num: pa, Dim: lang.Pressure, Unit: "kPa", Formula: &FormulaWaterLoss, Inputs: in})
}

// buildingPump compares a pump behind the separation with its circuits, at design
// and with every valve shut that may close.
func (h *hydraulics) buildingPump(b *buildingSide, p *plant.Part) {
	on, ok := p.Ref("on")
	if !ok {
		h.c.Missing(p, "pump-margin", Plain, Always, "the pipe or circuit that "+p.Label()+" stands in")
		h.c.Missing(p, "flow-left", Plain, ValvesShut, "the pipe or circuit that "+p.Label()+" stands in")
		return
	}
	var circuits []*plant.Part
	pipe := on.Part
	if on.Part.Kind == "circuit" {
		circuits = []*plant.Part{on.Part}
		pipe = nil
	} else {
		circuits = b.served(on.Part, 0, nil)
	}
	flow := flowOf(circuits)
	if flow == 0 {
		h.c.Missing(p, "pump-margin", Plain, Always, "the circuits that "+p.Label()+" serves, with their flows")
		h.c.Missing(p, "flow-left", Plain, ValvesShut, "the circuits that "+p.Label()+" serves, with their flows")
		return
	}
	left, need, lack, control := 0.0, 0.0, "", ""
	for _, c := range circuits {
		if c.Get("control").Open() && !c.Has("closing-valves") && !c.Has("bypass") {
			control = "whether the valves of " + c.Label() + " close (control)"
		}
		if !mayClose(c) {
			left += c.Get("flow").Num
		}
		switch loss := c.Get("loss"); {
		case h.ownPump(b, c) != nil && h.ownPump(b, c) != p:
		case !loss.Known():
			lack = "the loss of " + c.Label()
		default:
			need = max(need, loss.Num)
		}
	}
	in := h.c.Inputs(Input{Name: "V", Num: flow, Dim: lang.VolumeFlow, Unit: flowUnit(h.c.P)}, Input{Name: "flow left", Num: left, Dim: lang.VolumeFlow, Unit: flowUnit(h.c.P)})
	if control != "" {
		h.c.Missing(p, "flow-left", Plain, ValvesShut, control)
	} else {
		h.c.Add(Quantity{Part: p, Name: "flow-left", Case: ValvesShut, Num: left / flow, Dim: lang.Ratio, Unit: "%", Formula: &FormulaLeft, Inputs: in})
	}
	if pipe != nil {
		if q := h.c.Get(pipe, "pressure-loss", Always); q.Known() {
			need += q.Num
		}
		if r, ok := pipe.Ref("from"); ok && r.Part.Kind == "exchanger" {
			need += h.curve(r.Part.Child("secondary-loss-curve")).lost(flow)
		}
	}
	head, at := h.buildingHead(p, flow)
	switch {
	case lack != "":
	case head < 0:
		lack = at
	}
	if lack != "" {
		h.c.Missing(p, "pump-margin", Plain, Always, lack)
		return
	}
	in = h.c.Inputs(Input{Name: "pump head", Num: head, Dim: lang.Pressure, Unit: "kPa"}, Input{Name: "needed", Num: need, Dim: lang.Pressure, Unit: "kPa"}, Input{Name: "V", Num: flow, Dim: lang.VolumeFlow, Unit: flowUnit(h.c.P)})
	h.c.Add(Quantity{Part: p, Name: "needed-head", Num: need, Dim: lang.Pressure, Unit: "kPa", Formula: &FormulaDuty, Inputs: in})
	h.c.Add(Quantity{Part: p, Name: "pump-margin", Num: head - need, Dim: lang.Pressure, Unit: "kPa", Formula: &FormulaDuty, Inputs: in})
}

// ownPump finds the pump that stands in a circuit.
func (h *hydraulics) ownPump(b *buildingSide, circuit *plant.Part) *plant.Part {
	for _, p := range b.block.Children("plant-pump") {
		if r, ok := p.Ref("on"); ok && r.Part == circuit {
			return p
		}
	}
	return nil
}

// buildingHead is the head in Pa that the working pumps give together at a flow;
// below 0: not known, and what is lacking.
func (h *hydraulics) buildingHead(p *plant.Part, flow float64) (pa float64, lack string) {
	n := 1.0
	if v := p.Get("count"); v.Known() {
		n = v.Num
	}
	if p.Has("standby") && n > 1 {
		n--
	}
	speed := 1.0
	if v := p.Get("setting"); v.Known() {
		speed = v.Num
	}
	if c := h.curve(p.Child("head-curve")); len(c.flow) > 1 {
		pa, ok := c.at(flow / n / speed)
		if !ok {
			return -1, "a pump " + p.Label() + " whose curve reaches " + lang.In(flow/n, flowUnit(h.c.P))
		}
		return pa * speed * speed, ""
	}
	q, head := p.Get("flow"), p.Get("head")
	if !q.Known() || !head.Known() {
		return -1, "the head curve or the duty of " + p.Label()
	}
	if q.Num < flow*(1-1e-9) { // one duty point tells nothing about a larger flow
		return -1, "a duty of " + p.Label() + " at " + lang.In(flow, flowUnit(h.c.P))
	}
	return head.Num, ""
}

package solve

import (
	"example.org/tundish/check/calc/fittings"
	"example.org/tundish/check/calc/friction"
	"example.org/tundish/check/calc/network"
	"example.org/tundish/check/calc/water"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// Formulas of the water values.
var (
	FormulaHeaderVelocity = Formula{Text: "v = V/(pi/4 D^2), V the design flow of every unit upstream", Source: friction.SourceDarcy}
	FormulaWaterLoss      = Formula{Text: "dp = (f L/D + sum K) rho v^2/2; K = n fT, fT of the rough pipe: n 30 bend, 16 half bend, 20 tee through, 60 tee branch, 3 ball valve, 100 non-return valve; 3 strainer, 1 filter or air separator, 0.1 reducer, 0.05 union", Source: friction.SourceDarcy}
	FormulaPumpMargin     = Formula{Text: "margin = head of the pump at the design flow - unit, branches, headers, pipes and separation at the design flow", Source: friction.SourceDarcy}
	FormulaNetwork        = Formula{
		Text:   "flows and heads of the unit circuits, headers and pumps by the gradient method, pumps at their setting",
		Source: cite.Source{Work: "Todini and Pilati's global gradient method", Read: cite.Memory, Note: "compared with an independent solver on nine networks"},
	}
)

// hydraulics is the water side of the plant.
type hydraulics struct {
	c        *Context
	block    *plant.Part
	state    water.State
	units    []circuit
	flow     *plant.Part // flow header
	ret      *plant.Part // return header
	flowRun  []waterPipe // pipes between flow header and separation, in order
	retRun   []waterPipe
	sep      *plant.Part // exchanger or separator
	order    []int       // units along the flow header
	retOrder []int       // units along the return header
	missing  string
	parts    lineParts
	curves   []*curvePoints
	flowHead waterPipe // one segment of the flow header
	retHead  waterPipe
	flows    *unitFlows
}

// circuit is one unit with its branches and pump.
type circuit struct {
	unit                 *plant.Part
	design               float64 // m3/s, 0: not known
	out, in              waterPipe
	loss, head           *curvePoints // of the unit and of its pump
	setting              float64      // speed of the pump as a part of its full speed
	trimmed              bool         // the speed is set to the design flow: variable, and no setting stated
	oneWay               bool
	pump                 *plant.Part
	flowLink, returnPump network.Link
}

func (h *hydraulics) need(what string) {
	if h.missing == "" {
		h.missing = what
	}
}

// solveWater computes the water values of the plant.
func solveWater(c *Context) { waterSide(c) }

func waterSide(c *Context) *hydraulics {
	h := &hydraulics{c: c, block: c.P.Block("headers")}
	s, rise, missing := waterState(c.P)
	h.state = s
	if missing != "" {
		h.need(missing)
	}
	for _, e := range c.P.Block("separation").Children("exchanger") {
		approach(c, e) // asks nothing of units and headers
	}
	room := c.room()
	h.units, h.curves = room.circuits[:0], room.curves[:0]
	for _, u := range c.P.Units() {
		h.units = append(h.units, circuit{unit: u, design: unitFlow(c, u, s, rise, missing)})
	}
	room.circuits = h.units
	if h.block == nil || len(h.units) == 0 {
		return h
	}
	if c.P.Damaged("headers", "separation", "units") {
		h.need("a file that can be read whole")
	}
	h.headers()
	h.circuits()
	h.runs()
	h.design()
	h.network()
	h.solveSeparation()
	room.curves = h.curves
	return h
}

// headers finds the flow header (fed by units) and the return header.
func (h *hydraulics) headers() {
	for _, hd := range h.block.Children("header") {
		for _, r := range hd.Refs("from") {
			if r.Part.Kind == "unit" {
				h.flow = hd
			}
		}
		for _, r := range hd.Refs("to") {
			if r.Part.Kind == "unit" {
				h.ret = hd
			}
		}
	}
	if h.flow == nil {
		h.need("a flow header that the units feed")
	}
	if h.ret == nil {
		h.need("a return header that feeds the units")
	}
	h.order, h.retOrder = h.takeOff(h.flow), h.takeOff(h.ret)
}

// takeOff gives the order of the units along a header: as stated, else as they
// are named.
func (h *hydraulics) takeOff(header *plant.Part) []int {
	out := make([]int, 0, len(h.units))
	for _, t := range h.block.Children("take-off") {
		subj := t.Subjects()
		if len(subj) == 0 || subj[0].Part != header {
			continue
		}
		for _, r := range t.Refs("units") {
			for i := range h.units {
				if h.units[i].unit == r.Part {
					out = append(out, i)
				}
			}
		}
	}
	if len(out) == 0 {
		for i := range h.units {
			out = append(out, i)
		}
	} else if len(out) != len(h.units) {
		h.need("every unit once in the take-off order of " + header.Label())
	}
	return out
}

func (h *hydraulics) circuits() {
	for i := range h.units {
		u := &h.units[i]
		u.loss = h.curve(u.unit.Child("water-loss-curve"))
		u.pump = u.unit.Child("pump")
		u.head = h.curve(u.pump.Child("head-curve"))
		u.setting = 1
		if u.pump.Get("setting").Open() {
			h.need("the setting of the pump of " + u.unit.Label())
		}
		if v := u.pump.Get("setting"); v.Known() {
			u.setting = v.Num
		} else {
			u.trimmed = u.pump.Get("speed").Is("variable")
		}
		u.oneWay = u.pump.Has("non-return") || u.pump.Has("shut-off")
	}
	defer h.branchless()
	for _, b := range h.block.Children("branch") {
		for i := range h.units {
			u := &h.units[i]
			if r, ok := b.Ref("from"); ok && r.Part == u.unit {
				u.out = h.parts.newWaterPipe(b, b.Get("length"))
				l := h.parts.of(u.out.bore)
				u.out.k += l.k[fittings.TeeBranch] + h.valves(u.unit, "flow")*l.k[fittings.BallValve]
				if u.pump.Has("isolating") {
					u.out.k += 2 * l.k[fittings.BallValve]
				}
				if u.oneWay {
					u.out.k += l.k[fittings.NonReturn]
				}
			}
			if r, ok := b.Ref("to"); ok && r.Part == u.unit {
				u.in = h.parts.newWaterPipe(b, b.Get("length"))
				l := h.parts.of(u.in.bore)
				u.in.k += l.k[fittings.TeeBranch] + h.valves(u.unit, "return")*l.k[fittings.BallValve]
				if u.unit.Child("strainer") != nil {
					u.in.k += l.k[fittings.Strainer]
				}
			}
		}
	}
}

// branchless notes which units lack a branch.
func (h *hydraulics) branchless() {
	for i := range h.units {
		u := &h.units[i]
		if u.out.part == nil {
			u.out.missing = "the flow branch of " + u.unit.Label()
		}
		if u.in.part == nil {
			u.in.missing = "the return branch of " + u.unit.Label()
		}
	}
}

// runs follows the pipes from the flow header to the separation and from there
// to the return header.
func (h *hydraulics) runs() {
	next := h.flow
	for range 16 {
		p := h.pipeFrom(next)
		if p == nil {
			break
		}
		h.flowRun = append(h.flowRun, h.run(p))
		r, ok := p.Ref("to")
		if !ok {
			h.need("where " + p.Label() + " leads")
			return
		}
		if k := r.Part.Kind; k == "exchanger" || k == "separator" {
			h.sep = r.Part
			break
		}
		next = r.Part
	}
	if h.sep == nil && h.flow != nil {
		if r, ok := h.flow.Ref("to"); ok && (r.Part.Kind == "exchanger" || r.Part.Kind == "separator") {
			h.sep = r.Part
		}
	}
	if h.ret == nil {
		return
	}
	for _, p := range h.block.Children("pipe") {
		if r, ok := p.Ref("to"); ok && r.Part == h.ret {
			h.retRun = append(h.retRun, h.run(p))
		}
	}
}

// run is a pipe of the common run with the parts that stand in it.
func (h *hydraulics) run(p *plant.Part) waterPipe {
	w := h.parts.newWaterPipe(p, p.Get("length"))
	for _, kind := range [...]string{"strainer", "filter", "air-separator"} {
		for _, part := range h.c.P.ByKind(kind) {
			if r, ok := part.Ref("on"); !ok || r.Part != p {
				continue
			}
			if lack := openValue(part, "loss"); lack != "" && w.missing == "" {
				w.missing = lack
			}
			if v := part.Get("loss"); v.Known() {
				w.stated += v.Num
			} else if kind == "strainer" {
				w.k += h.parts.of(w.bore).k[fittings.Strainer]
			} else {
				w.k += kExitHeader
			}
		}
	}
	return w
}

func (h *hydraulics) pipeFrom(part *plant.Part) *plant.Part {
	if part == nil {
		return nil
	}
	for _, p := range h.block.Children("pipe") {
		if r, ok := p.Ref("from"); ok && r.Part == part {
			return p
		}
	}
	return nil
}

// segments gives the length of a header between two take-offs.
func segments(header *plant.Part, n int) (plant.Value, float64) {
	length := header.Get("length")
	if v := header.Get("pitch"); v.Known() {
		return v, v.Num
	}
	if length.Known() && n > 1 {
		return length, length.Num / float64(n-1)
	}
	return length, length.Num
}

// headerTee is the loss coefficient of a tee passed straight through.
func (h *hydraulics) headerTee(header *plant.Part, bore float64) float64 {
	if v := header.Get("loss-coefficient"); v.Known() {
		return v.Num
	}
	if bore <= 0 {
		return 0
	}
	return h.parts.of(bore).k[fittings.TeeRun]
}

// valves counts the isolating valves on one side of a unit.
func (h *hydraulics) valves(unit *plant.Part, side string) float64 {
	n := 0.0
	for v := range unit.Child("water-valve").List("sides") {
		if v.Is(side) {
			n++
		}
	}
	return n
}

// design computes the values at the design flow of every unit: velocity, loss
// and gradient of headers and pipes, head needed and head at hand of each pump.
func (h *hydraulics) design() {
	total, lack := 0.0, ""
	for i := range h.units {
		if h.units[i].design == 0 && lack == "" {
			lack = "the design flow of " + h.units[i].unit.Label()
		}
		total += h.units[i].design
	}
	h.flowHead, h.retHead = h.segment(h.flow, len(h.order)), h.segment(h.ret, len(h.retOrder))
	for _, list := range [...][]waterPipe{h.flowRun, h.retRun} {
		for i := range list {
			list[i].statedAsFactor(total, h.state.Density)
		}
	}
	for i := range h.units {
		u := &h.units[i]
		u.out.statedAsFactor(u.design, h.state.Density)
		u.in.statedAsFactor(u.design, h.state.Density)
	}
	flowShare := h.header(h.flowHead, h.order, total, lack, false)
	retShare := h.header(h.retHead, h.retOrder, total, lack, true)
	common := 0.0
	known := lack == "" && flowShare != nil && retShare != nil
	for _, list := range [][]waterPipe{h.flowRun, h.retRun} {
		for i := range list {
			pa, ok := h.pipeValues(&list[i], total, lack)
			common += pa
			known = known && ok
		}
	}
	common, known = h.separation(total, lack, common, known)
	for i := range h.units {
		h.pumpMargin(&h.units[i], i, common, known, flowShare, retShare)
	}
}

// segment is a header from one take-off to the next, with the tee at its end.
func (h *hydraulics) segment(part *plant.Part, n int) waterPipe {
	if part == nil {
		return waterPipe{}
	}
	length, share := segments(part, n)
	w := h.parts.newWaterPipe(part, length)
	w.length, w.k = share, h.headerTee(part, w.bore)
	return w
}

// header stores velocity, gradient and loss of a header, and gives for each
// unit the loss between its take-off and the header's end.
func (h *hydraulics) header(w waterPipe, order []int, total float64, lack string, isReturn bool) []float64 {
	part, share := w.part, w.length
	if part == nil {
		return nil
	}
	if w.missing == "" {
		w.missing = lack
	}
	if w.missing == "" && len(order) != len(h.units) {
		w.missing = "every unit once in the take-off order of " + part.Label()
	}
	if w.missing != "" {
		for _, name := range [...]string{"velocity", "gradient", "pressure-loss"} {
			h.c.Missing(part, name, Plain, Always, w.missing)
		}
		return nil
	}
	losses := make([]float64, len(h.units))
	n := len(order)
	flow, sum := 0.0, 0.0
	if isReturn {
		flow = total // falls from take-off to take-off
		for k := 0; k < n; k++ {
			losses[order[k]] = sum
			flow -= h.units[order[k]].design
			if k < n-1 {
				pa, _, _ := w.loss(flow, &h.state)
				sum += pa
			}
		}
	} else {
		var seg [64]float64
		for k := 0; k < n-1 && k < len(seg); k++ {
			flow += h.units[order[k]].design
			seg[k], _, _ = w.loss(flow, &h.state)
			sum += seg[k]
		}
		after := sum
		for k := 0; k < n; k++ {
			losses[order[k]] = after
			if k < n-1 {
				after -= seg[k]
			}
		}
	}
	_, v, g := w.loss(total, &h.state)
	in := w.inputs(h.c, total, v, g, &h.state)
	h.c.Add(Quantity{Part: part, Name: "velocity", Num: v, Dim: lang.Velocity, Unit: "m/s", Formula: &FormulaHeaderVelocity, Inputs: in})
	h.c.Add(Quantity{Part: part, Name: "gradient", Num: g, Dim: lang.PressureGrad, Unit: "Pa/m", Formula: &FormulaWaterLoss, Inputs: in})
	h.c.Add(Quantity{
		Part: part, Name: "pressure-loss", Num: sum, Dim: lang.Pressure, Unit: "kPa", Formula: &FormulaWaterLoss,
		Inputs: h.c.Inputs(Input{Name: "L of a segment", Num: share, Dim: lang.Length}, Input{Name: "segments", Num: float64(n - 1), Dim: lang.Count}, Input{Name: "K of a tee", Num: w.k, Dim: lang.Ratio}, Input{Name: "D", Num: w.bore, Dim: lang.Length, Unit: "mm"}),
	})
	return losses
}

// pipeValues stores velocity, gradient and loss of a pipe of the common run.
func (h *hydraulics) pipeValues(w *waterPipe, flow float64, lack string) (float64, bool) {
	if w.missing == "" {
		w.missing = lack
	}
	if w.missing != "" {
		for _, name := range [...]string{"velocity", "gradient", "pressure-loss"} {
			h.c.Missing(w.part, name, Plain, Always, w.missing)
		}
		return 0, false
	}
	pa, v, g := w.loss(flow, &h.state)
	in := w.inputs(h.c, flow, v, g, &h.state)
	h.c.Add(Quantity{Part: w.part, Name: "velocity", Num: v, Dim: lang.Velocity, Unit: "m/s", Formula: &FormulaHeaderVelocity, Inputs: in})
	h.c.Add(Quantity{Part: w.part, Name: "gradient", Num: g, Dim: lang.PressureGrad, Unit: "Pa/m", Formula: &FormulaWaterLoss, Inputs: in})
	h.c.Add(Quantity{Part: w.part, Name: "pressure-loss", Num: pa, Dim: lang.Pressure, Unit: "kPa", Formula: &FormulaWaterLoss, Inputs: in})
	return pa, true
}

// separation adds the loss of the exchanger's primary side; a separator has
// none worth counting.
func (h *hydraulics) separation(total float64, lack string, common float64, known bool) (float64, bool) {
	if h.sep == nil || h.sep.Kind != "exchanger" {
		return common, known
	}
	c := h.curve(h.sep.Child("primary-loss-curve"))
	if lack != "" || len(c.flow) == 0 {
		what := lack
		if what == "" {
			what = "the primary loss curve of " + h.sep.Label()
		}
		h.c.Missing(h.sep, "pressure-loss", Plain, Always, what)
		return common, false
	}
	loss := c.lost(total)
	h.c.Add(Quantity{Part: h.sep, Name: "pressure-loss", Num: loss, Dim: lang.Pressure, Unit: "kPa", Formula: &FormulaWaterLoss, Inputs: h.c.Inputs(Input{Name: "V", Num: total, Dim: lang.VolumeFlow, Unit: flowUnit(h.c.P)})})
	return common + loss, known
}

func (h *hydraulics) pumpMargin(u *circuit, i int, common float64, known bool, flowShare, retShare []float64) {
	lack := ""
	switch {
	case u.pump == nil:
		lack = "the pump of " + u.unit.Label()
	case u.design == 0:
		lack = "the design flow of " + u.unit.Label()
	case len(u.loss.flow) == 0:
		lack = "the water loss curve of " + u.unit.Label()
	case len(u.head.flow) < 2:
		lack = "the head curve of the pump of " + u.unit.Label()
	case u.out.missing != "":
		lack = u.out.missing
	case u.in.missing != "":
		lack = u.in.missing
	case !known:
		lack = "headers and common pipes that can be computed"
	}
	if lack != "" {
		h.c.Missing(u.unit, "pump-margin", Plain, AllFull, lack)
		return
	}
	own := u.loss.lost(u.design)
	branch, _, _ := u.out.loss(u.design, &h.state)
	back, _, _ := u.in.loss(u.design, &h.state)
	need := own + branch + back + flowShare[i] + retShare[i] + common
	n := u.setting
	head, ok := u.head.at(u.design / n)
	head *= n * n
	if !ok {
		h.c.Missing(u.unit, "pump-margin", Plain, AllFull, "a pump whose curve reaches the design flow of "+lang.In(u.design, flowUnit(h.c.P)))
		return
	}
	in := h.c.Inputs(
		Input{Name: "pump head", Num: head, Dim: lang.Pressure, Unit: "kPa"}, Input{Name: "unit", Num: own, Dim: lang.Pressure, Unit: "kPa"}, Input{Name: "branches", Num: branch + back, Dim: lang.Pressure, Unit: "kPa"},
		Input{Name: "headers", Num: flowShare[i] + retShare[i], Dim: lang.Pressure, Unit: "kPa"}, Input{Name: "pipes and separation", Num: common, Dim: lang.Pressure, Unit: "kPa"},
		Input{Name: "V", Num: u.design, Dim: lang.VolumeFlow, Unit: flowUnit(h.c.P)},
	)
	h.c.Add(Quantity{Part: u.unit, Name: "needed-head", Case: AllFull, Num: need, Dim: lang.Pressure, Unit: "kPa", Formula: &FormulaPumpMargin, Inputs: in, At: u.pump.Span()})
	h.c.Add(Quantity{Part: u.unit, Name: "pump-margin", Case: AllFull, Num: head - need, Dim: lang.Pressure, Unit: "kPa", Formula: &FormulaPumpMargin, Inputs: in, At: u.pump.Span()})
}

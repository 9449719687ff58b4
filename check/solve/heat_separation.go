package solve

import (
	"math"
	"slices"

	"example.org/tundish/check/calc/exchanger"
	"example.org/tundish/check/calc/separator"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// Formulas of the separation.
var (
	FormulaBodyVelocity = Formula{Text: "v = V/(pi/4 D^2), V the larger of the flows of both sides, D the nominal size where no bore is stated", Source: separator.Source}
	FormulaFlowRatio    = Formula{Text: "ratio = flow of the units at design load, those in reserve off / flow of the circuits", Source: separator.Source}
	FormulaMix          = Formula{Text: "m2 <= m1: back = (m2 t_return + (m1 - m2) t_flow)/m1; m2 > m1: supplied = (m1 t_flow + (m2 - m1) t_return)/m2", Source: separator.Source}
	FormulaCarry        = Formula{Text: "back = t_flow - P/(m1 cp); supplied = t_flow, or back + P/(m2 cp) where m2 > m1; P the outputs that run, at most the load; circuits at design flow", Source: separator.Source}
	FormulaExchanger    = Formula{Text: "Q = eps Cmin (t_flow - t_return of the circuits), counter-flow, U less the fouling margin, units in reserve off", Source: exchanger.Source}
	FormulaExchangerOff = Formula{Text: "back = outlet of the hot side that carries P with the circuits at design flow and return; the flow no hotter than its design", Source: exchanger.Source}
	FormulaApproach     = Formula{Text: "difference of the stated temperatures of both sides at the same end", Source: exchanger.Source}
)

// separationSide is what the separation needs of the units.
type separationSide struct {
	h        *hydraulics
	b        *buildingSide
	flow     float64 // degC, design flow temperature of the units
	capacity float64 // J/(m3.K) of the units' water
	demand   float64 // W, 0: not known
	reserve  int
}

// solveSeparation computes separator and exchanger and the temperature that comes
// back to the units for each set of running units.
func (h *hydraulics) solveSeparation() {
	b := h.solveBuilding()
	sep := h.c.P.Block("separation")
	if sep == nil {
		return
	}
	s := &separationSide{h: h, b: b, capacity: h.state.Density * h.state.SpecificHeat}
	lack := b.missing
	primary := h.c.P.Block("basis").Get("primary")
	switch {
	case h.state.Density == 0 || !primary.Known():
		lack = "the flow and return temperature in the basis (primary)"
	default:
		s.flow = primary.Num
	}
	if lack == "" {
		lack = openValue(h.c.P.Block("basis"), "standby")
	}
	if v := h.c.P.Block("basis").Get("standby"); v.Known() {
		s.reserve = int(v.Num + 0.5)
	}
	if q := h.c.Get(h.c.P.Block("basis"), "load", Always); q.Known() {
		s.demand = q.Num
	} else if b.missing == "" {
		s.demand = b.heat
	}
	for _, part := range sep.Parts {
		switch part.Kind {
		case "separator":
			s.separator(part, lack)
		case "exchanger":
			s.exchanger(part, lack)
		}
	}
}

// unitsFlow sums the flow of a set of units in m3/s and their outputs in W; lack
// says what is missing.
func (s *separationSide) unitsFlow(c Case) (flow, output float64, lack string) {
	h := s.h
	n := len(h.units)
	off := 0
	switch c {
	case Always:
		off = s.reserve
	case OneOff:
		off = 1
	}
	if off >= n {
		return 0, 0, "more units than stand in reserve"
	}
	var order [16]int
	idx := order[:0]
	for i := range h.units {
		idx = append(idx, i)
	}
	if off > 0 { // the largest are off
		slices.SortStableFunc(idx, func(a, b int) int {
			switch d := h.units[b].design - h.units[a].design; {
			case d > 0:
				return 1
			case d < 0:
				return -1
			}
			return 0
		})
		idx = idx[off:]
	}
	if c == OneAlone { // the smallest is the last to run
		least := 0
		for i := range h.units {
			if h.units[i].design < h.units[least].design {
				least = i
			}
		}
		idx = append(order[:0], least)
	}
	for _, i := range idx {
		u := &h.units[i]
		q := u.design
		if h.flows != nil {
			solved := h.flows.all[i]
			switch {
			case c == OneAlone:
				solved = h.flows.alone[i]
			case c == OneOff && i != h.flows.largest, c == Always && s.reserve == 1 && i != h.flows.largest:
				solved = h.flows.oneOff[i]
			}
			q = u.runningFlow(solved)
		} else if !u.trimmed {
			return 0, 0, "a water network that can be solved"
		}
		out, _ := h.c.output(u.unit)
		if q <= 0 || math.IsNaN(q) || !out.Known() {
			return 0, 0, "the flow and output of " + u.unit.Label()
		}
		flow, output = flow+q, output+out.Num
	}
	return flow, output, ""
}

var separationCases = [...]Case{AllFull, OneOff, OneAlone}

// separator stores velocity, flow ratio and temperatures of a separator.
func (s *separationSide) separator(part *plant.Part, lack string) {
	h := s.h
	unit := flowUnit(h.c.P)
	m1, _, lack1 := s.unitsFlow(Always)
	all, _, lackAll := s.unitsFlow(AllFull)
	if lack == "" {
		lack = lack1
	}
	s.bodyVelocity(part, all, lackAll)
	if lack != "" {
		for _, name := range [...]string{"flow-ratio", "secondary-temperature", "return-temperature"} {
			h.c.Missing(part, name, Plain, Always, lack)
		}
		return
	}
	m2 := s.b.flow
	supplied, back, err := separator.Mix(m1*s.capacity, m2*s.b.state.Density*s.b.state.SpecificHeat, s.flow, s.b.ret)
	if err != nil {
		h.c.Missing(part, "flow-ratio", Plain, Always, err.Error())
		return
	}
	in := h.c.Inputs(
		Input{Name: "m1", Num: m1, Dim: lang.VolumeFlow, Unit: unit}, Input{Name: "m2", Num: m2, Dim: lang.VolumeFlow, Unit: unit},
		Input{Name: "t_flow", Num: s.flow, Dim: lang.Temperature}, Input{Name: "t_return", Num: s.b.ret, Dim: lang.Temperature},
	)
	h.c.Add(Quantity{Part: part, Name: "flow-ratio", Num: m1 / m2, Dim: lang.Ratio, Unit: "%", Formula: &FormulaFlowRatio, Inputs: in})
	h.c.Add(Quantity{Part: part, Name: "secondary-temperature", Num: supplied, Dim: lang.Temperature, Formula: &FormulaMix, Inputs: in})
	h.c.Add(Quantity{Part: part, Name: "return-temperature", Num: back, Dim: lang.Temperature, Formula: &FormulaMix, Inputs: in})
	for _, c := range separationCases {
		m1, output, lack := s.unitsFlow(c)
		if lack != "" || c == OneOff && len(h.units) < 2 {
			continue
		}
		heat := min(output, s.demand)
		supplied, back, err := separator.Carry(m1*s.capacity, m2*s.capacity, s.flow, heat, 1)
		if err != nil {
			continue
		}
		in := h.c.Inputs(
			Input{Name: "P", Num: heat, Dim: lang.Power}, Input{Name: "m1", Num: m1, Dim: lang.VolumeFlow, Unit: unit}, Input{Name: "m2", Num: m2, Dim: lang.VolumeFlow, Unit: unit}, Input{Name: "t_flow", Num: s.flow, Dim: lang.Temperature},
			Input{Name: "cp", Num: h.state.SpecificHeat, Dim: lang.SpecificHeat}, Input{Name: "rho", Num: h.state.Density, Dim: lang.Density},
		)
		h.c.Add(Quantity{Part: part, Name: "secondary-temperature", Case: c, Num: supplied, Dim: lang.Temperature, Formula: &FormulaCarry, Inputs: in})
		h.c.Add(Quantity{Part: part, Name: "return-temperature", Case: c, Num: back, Dim: lang.Temperature, Formula: &FormulaCarry, Inputs: in})
	}
}

// bodyVelocity stores the velocity in the body and in the ports.
func (s *separationSide) bodyVelocity(part *plant.Part, primary float64, lack string) {
	h := s.h
	flow := max(primary, s.b.flow)
	if lack == "" && s.b.missing != "" && primary == 0 {
		lack = s.b.missing
	}
	bore := 0.0
	if v := part.Type.Child("body").Get("bore"); v.Known() {
		bore = v.Num
	} else if v := part.Get("body"); v.Known() {
		bore = v.Num
	}
	ports := part.Get("ports")
	if !ports.Known() {
		ports = part.Type.Child("connection").First()
	}
	add := func(name string, d float64, what string) {
		switch {
		case lack != "":
			h.c.Missing(part, name, Plain, Always, lack)
		case d <= 0:
			h.c.Missing(part, name, Plain, Always, what)
		default:
			h.c.Add(Quantity{
				Part: part, Name: name, Num: flow / (math.Pi / 4 * d * d), Dim: lang.Velocity, Unit: "m/s", Formula: &FormulaBodyVelocity,
				Inputs: h.c.Inputs(Input{Name: "V", Num: flow, Dim: lang.VolumeFlow, Unit: flowUnit(h.c.P)}, Input{Name: "D", Num: d, Dim: lang.Length, Unit: "mm"}),
			})
		}
	}
	add("velocity", bore, "the size of the body of "+part.Label())
	d := 0.0
	if ports.Known() {
		d = ports.Num
	}
	add("port-velocity", d, "the size of the ports of "+part.Label())
}

// exchanger stores duty, approach, losses and temperatures of a plate exchanger.
func (s *separationSide) exchanger(part *plant.Part, lack string) {
	h := s.h
	ua, lackUA := conductanceOf(part)
	m1, _, lack1 := s.unitsFlow(Always)
	for _, l := range [...]string{lackUA, lack1} {
		if lack == "" {
			lack = l
		}
	}
	if lack != "" {
		h.c.Missing(part, "duty", Plain, Always, lack)
	} else {
		s.duty(part, ua, m1)
	}
	c := h.curve(part.Child("secondary-loss-curve"))
	switch {
	case s.b.missing != "":
		h.c.Missing(part, "secondary-loss", Plain, Always, s.b.missing)
	case len(c.flow) == 0:
		h.c.Missing(part, "secondary-loss", Plain, Always, "the secondary loss curve of "+part.Label())
	default:
		h.c.Add(Quantity{Part: part, Name: "secondary-loss", Num: c.lost(s.b.flow), Dim: lang.Pressure, Unit: "kPa", Formula: &FormulaWaterLoss, Inputs: h.c.Inputs(Input{Name: "V", Num: s.b.flow, Dim: lang.VolumeFlow, Unit: flowUnit(h.c.P)})})
	}
}

// conductanceOf is U A in W/K with the fouling margin taken off.
func conductanceOf(part *plant.Part) (ua float64, lack string) {
	area, u := part.Get("area"), part.Get("conductance")
	switch {
	case !area.Known():
		return 0, "the heat transfer area of " + part.Label()
	case !u.Known():
		return 0, "the heat transfer coefficient of " + part.Label()
	}
	ua = area.Num * u.Num
	if v := part.Child("fouling-margin").First(); v.Known() && !part.Child("conductance").Get("state").Is("fouled") {
		ua *= 1 - v.Num
	}
	return ua, ""
}

func (s *separationSide) duty(part *plant.Part, ua, m1 float64) {
	h := s.h
	cold := exchanger.Side{Flow: s.b.flow * s.b.state.Density, SpecificHeat: s.b.state.SpecificHeat, Inlet: s.b.ret}
	hot := exchanger.Side{Flow: m1 * h.state.Density, SpecificHeat: h.state.SpecificHeat, Inlet: s.flow}
	r, err := exchanger.CounterFlow(hot, cold, ua)
	if err != nil {
		h.c.Missing(part, "duty", Plain, Always, err.Error())
		return
	}
	in := h.c.Inputs(
		Input{Name: "UA", Num: ua / 1e3, Dim: lang.Ratio, Text: lang.In(ua, "W") + "/K"},
		Input{Name: "primary flow", Num: m1, Dim: lang.VolumeFlow, Unit: flowUnit(h.c.P)}, Input{Name: "secondary flow", Num: s.b.flow, Dim: lang.VolumeFlow, Unit: flowUnit(h.c.P)},
		Input{Name: "t_flow", Num: s.flow, Dim: lang.Temperature}, Input{Name: "t_return of the circuits", Num: s.b.ret, Dim: lang.Temperature},
	)
	h.c.Add(Quantity{Part: part, Name: "duty", Num: r.Duty, Dim: lang.Power, Formula: &FormulaExchanger, Inputs: in})
	h.c.Add(Quantity{Part: part, Name: "effectiveness", Num: r.Effectiveness, Dim: lang.Ratio, Unit: "%", Formula: &FormulaExchanger, Inputs: in})
	for _, c := range [...]Case{Always, AllFull, OneOff, OneAlone} {
		m1, output, lack := s.unitsFlow(c)
		if lack != "" || c == OneOff && len(h.units) < 2 {
			continue
		}
		hot.Flow = m1 * h.state.Density
		r, err := exchanger.CounterFlow(hot, cold, ua)
		if err != nil || r.Duty <= 0 {
			continue
		}
		// The duty is in proportion to the difference at the inlets: the flow
		// temperature falls until the exchanger carries just the heat there is.
		heat := min(output, s.demand, r.Duty)
		flow := cold.Inlet + (hot.Inlet-cold.Inlet)*heat/r.Duty
		in := h.c.Inputs(Input{Name: "P", Num: heat, Dim: lang.Power}, Input{Name: "primary flow", Num: m1, Dim: lang.VolumeFlow, Unit: flowUnit(h.c.P)}, Input{Name: "t_flow", Num: flow, Dim: lang.Temperature})
		h.c.Add(Quantity{Part: part, Name: "return-temperature", Case: c, Num: flow - heat/(m1*s.capacity), Dim: lang.Temperature, Formula: &FormulaExchangerOff, Inputs: in})
		h.c.Add(Quantity{Part: part, Name: "secondary-temperature", Case: c, Num: s.b.ret + heat/(cold.Flow*cold.SpecificHeat), Dim: lang.Temperature, Formula: &FormulaExchangerOff, Inputs: in})
	}
}

// approach stores how near the stated temperatures of both sides come.
func approach(c *Context, part *plant.Part) {
	basis := c.P.Block("basis")
	hot, cold := part.Get("primary"), part.Get("secondary")
	if !hot.Known() {
		hot = basis.Get("primary")
	}
	if !cold.Known() {
		cold = basis.Get("secondary")
	}
	if !hot.Known() || !cold.Known() {
		c.Missing(part, "approach", Plain, Always, "the flow and return temperatures of both sides of "+part.Label())
		c.Missing(part, "approach", Least, Always, "the flow and return temperatures of both sides of "+part.Label())
		return
	}
	in := c.Inputs(Input{Name: "primary", Text: lang.Num(hot.Num, 4) + "/" + lang.Num(hot.Num2, 4) + " degC"}, Input{Name: "secondary", Text: lang.Num(cold.Num, 4) + "/" + lang.Num(cold.Num2, 4) + " degC"})
	c.Add(Quantity{Part: part, Name: "approach", Num: hot.Num2 - cold.Num2, Dim: lang.TempDiff, Formula: &FormulaApproach, Inputs: in})
	c.Add(Quantity{Part: part, Name: "approach", Stat: Least, Num: min(hot.Num2-cold.Num2, hot.Num-cold.Num), Dim: lang.TempDiff, Formula: &FormulaApproach, Inputs: in})
}

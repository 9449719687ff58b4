package solve

import (
	"math"

	"example.org/tundish/check/calc/flue"
	"example.org/tundish/lang"
)

// FormulaBackFlow is the flow through a stopped unit with an open damper.
var FormulaBackFlow = Formula{
	Text:   "m = sqrt(p/(R_connector + R_unit)), p behind the damper with the others at full fire: above 0 products into the unit, the flow of the header not lessened by it; below 0 air from the unit, in balance with the flue",
	Source: flue.SourceBalance,
}

// roomAir is the temperature in degC of air that a flue draws through a stopped
// unit; common practice.
const roomAir = 20

// damperOpen computes what flows through unit u while its damper is stuck open and
// the others are at full fire; back is the pressure in Pa behind its shut damper.
// The firings hold the case with u stopped. Where air is drawn in, the margins
// of the others are kept for openMargins.
func (m *flueModel) damperOpen(c *Context, u int, back float64) {
	unit := &m.units[u]
	loss := unit.part.Child("flue-data").Child("through-loss")
	pa, at := loss.Get("pressure"), loss.Get("flow")
	if !pa.Known() || !at.Known() || at.Num <= 0 {
		c.Missing(unit.part, "flue-back-flow", Plain, DamperOpen, "what the flow through the stopped "+unit.part.Label()+" loses (through-loss)")
		return
	}
	through := pa.Num / (at.Num * at.Num)
	flow := 0.0
	switch {
	case back > 0 && through > 0:
		flow = math.Sqrt(back / (through + unit.resistance))
	case back < 0 && through > 0:
		var ok bool
		if flow, ok = m.drawn(u, back, through); !ok {
			c.Missing(unit.part, "flue-back-flow", Plain, DamperOpen, "a flue that can be balanced with the damper of "+unit.part.Label()+" open")
			return
		}
		for i := range m.units {
			if i == u {
				continue
			}
			if o := &m.units[i]; !(m.firings[i].Margin(m.states) >= o.openLeast) {
				o.openLeast, o.openAt = m.firings[i].Margin(m.states), u
			}
		}
		flow = -flow
	}
	c.Add(Quantity{
		Part: unit.part, Name: "flue-back-flow", Case: DamperOpen, Num: flow, Dim: lang.MassFlow, Unit: "kg/h", Formula: &FormulaBackFlow,
		Inputs: c.Inputs(
			Input{Name: "p", Num: back, Dim: lang.Pressure, Unit: "Pa"}, Input{Name: "lost through the unit", Num: pa.Num, Dim: lang.Pressure, Unit: "Pa"}, Input{Name: "at", Num: at.Num, Dim: lang.MassFlow, Unit: "kg/h"},
			Input{Name: "lost in the connector at full fire", Num: unit.resistance * unit.full.mass * unit.full.mass, Dim: lang.Pressure, Unit: "Pa"}, Input{Name: "full fire", Num: unit.full.mass, Dim: lang.MassFlow, Unit: "kg/h"},
		),
	})
}

// drawn finds the flow in kg/s of room air through stopped unit u at which what
// the unit loses is what the flue draws; back is the draught in Pa, below 0, with
// no flow, and the states hold that case. The first guess takes the losses of unit
// and ducts to rise with the square of their flow and the densities to stay; Newton
// by the slope of that guess and then secants find the rest. ok is false where it
// does not settle.
func (m *flueModel) drawn(u int, back, through float64) (flow float64, ok bool) {
	square, linear := through+m.common.SafetyFactor*m.units[u].resistance, 0.0
	for i := m.common.Ducts[u].Next; i >= 0; i = m.common.Ducts[i].Next {
		if s := &m.states[i]; s.MassFlow > 0 {
			per := s.Friction / s.MassFlow
			linear += 2 * per
			square += per / s.MassFlow
		}
	}
	missing := func(q float64) float64 { // of the draught, Pa
		m.firings[u] = flue.Firing{Duct: u, MassFlow: q, Temperature: roomAir}
		if m.balance() != nil {
			return math.NaN()
		}
		return m.states[u].Start + through*q*q
	}
	flow = (math.Sqrt(linear*linear-4*square*back) - linear) / (2 * square)
	off, slope := missing(flow), linear+2*square*flow
	for range 20 {
		if math.Abs(off) < 0.01 {
			return flow, true
		}
		next := flow - off/slope
		if !(next > 0) {
			next = flow / 2
		}
		was := off
		off = missing(next)
		slope = (off - was) / (next - flow)
		flow = next
	}
	return 0, false
}

// openMargins stores the least margin of each unit at full fire while another
// one's damper is stuck open and air is drawn through it. Where products are
// pushed back, the others have more than with all units at full fire.
func (m *flueModel) openMargins(c *Context) {
	for i := range m.units {
		u := &m.units[i]
		if math.IsNaN(u.openLeast) {
			continue
		}
		c.Add(Quantity{
			Part: u.part, Name: "flue-margin", Case: DamperOpen, Num: u.openLeast, Dim: lang.Pressure, Unit: "Pa", Formula: &FormulaFlueBalance, At: u.connector.Span(),
			Inputs: c.Inputs(Input{Name: "damper open", Text: m.units[u.openAt].part.Label()}, Input{Name: "fan pressure", Num: u.full.push, Dim: lang.Pressure, Unit: "Pa"}, Input{Name: "p at the outlet of the unit", Num: u.full.push - u.openLeast, Dim: lang.Pressure, Unit: "Pa"}),
		})
	}
}

package solve

import (
	"math"

	"example.org/tundish/check/calc/combustion"
	"example.org/tundish/check/calc/flue"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// Formulas of the flue values.
var (
	FormulaFlueBalance = Formula{
		Text:   "p = p_next + S_E (f L/D + sum zeta) rho w^2/2 - g H (rho_outside - rho), from the outlet back; margin = fan pressure - p",
		Source: flue.SourceBalance,
	}
	FormulaFlueVelocity = Formula{Text: "w = m / (rho A)", Source: flue.SourceFriction}
	FormulaFlueOutlet   = Formula{Text: "t_out = t_amb + (t_in - t_amb) exp(-U pi D L / (m cp))", Source: flue.SourceCooling}
	FormulaDewPoint     = Formula{Text: "t_dew = Tsat(x p), x the share of water vapor in the wet products", Source: combustion.SourceDewPoint}
	FormulaFall         = Formula{Text: "fall of the run in mm by m; 3 degrees are tan 3 = 52.4 mm/m", Source: flue.SourceFall}
	FormulaFlueLength   = Formula{
		Text:   "L_eq = sum of lengths + bends x length of a bend",
		Source: cite.Source{Work: "the unit's own flue data", Read: cite.Published},
	}
)

// solveFlue computes every flue of the plant in its firing cases.
func solveFlue(c *Context) {
	for _, part := range c.P.ByKind("flue") {
		solveOneFlue(c, part)
	}
}

func solveOneFlue(c *Context, part *plant.Part) {
	m := newFlueModel(c, part)
	flueFalls(c, part)
	flueDewPoint(c, m)
	flueHeat(c, m)
	if m.missing != "" {
		for i := range m.units {
			for _, k := range [...]Case{AllFull, OneLow, OneAlone} {
				c.Missing(m.units[i].part, "flue-margin", Plain, k, m.missing)
			}
		}
		c.Missing(part, "pressure", Most, AllFull, m.missing)
		return
	}
	m.allFull(c)
	m.oneByOne(c)
}

// set puts one unit into the firing case.
func (m *flueModel) set(i int, p *products) {
	m.firings[i] = flue.Firing{Duct: i, MassFlow: p.mass, Temperature: p.temperature, Push: p.push}
}

func (m *flueModel) stop(i int) { m.firings[i] = flue.Firing{Duct: i} }

// balance runs the firing case that is set.
func (m *flueModel) balance() error {
	if m.balanced {
		return m.common.Again(m.firings, m.states)
	}
	err := m.common.Balance(m.firings, m.states)
	m.balanced = err == nil
	return err
}

// lacking tells what a case needs of the units that fire in it; low is the unit
// at minimum rate, -1 for none.
func (m *flueModel) lacking(low int) string {
	for i := range m.units {
		p := &m.units[i].full
		if i == low {
			p = &m.units[i].low
		}
		if p.missing != "" {
			return p.missing
		}
	}
	return ""
}

func (m *flueModel) inputs(c *Context, i int) []Input {
	s := &m.states[i]
	push := m.firings[i].Push
	return c.Inputs(
		Input{Name: "fan pressure", Num: push, Dim: lang.Pressure, Unit: "Pa"}, Input{Name: "p at the outlet of the unit", Num: s.Start, Dim: lang.Pressure, Unit: "Pa"},
		Input{Name: "m", Num: s.MassFlow, Dim: lang.MassFlow, Unit: "g/s"}, Input{Name: "S_E", Num: m.common.SafetyFactor, Dim: lang.Ratio},
		Input{Name: "wind", Num: m.common.Wind, Dim: lang.Pressure, Unit: "Pa"},
	)
}

// allFull runs every unit at full fire: margins, velocities, pressures and the
// temperature at the outlet.
func (m *flueModel) allFull(c *Context) {
	if lack := m.lacking(-1); lack != "" {
		for i := range m.units {
			c.Missing(m.units[i].part, "flue-margin", Plain, AllFull, lack)
		}
		c.Missing(m.part, "pressure", Most, AllFull, lack)
		return
	}
	for i := range m.units {
		m.set(i, &m.units[i].full)
	}
	if err := m.balance(); err != nil {
		c.Missing(m.part, "pressure", Most, AllFull, err.Error())
		return
	}
	for i := range m.units {
		if s := &m.states[i]; s.MassFlow > 0 {
			m.units[i].resistance = s.Friction / (m.common.SafetyFactor * s.MassFlow * s.MassFlow)
		}
		c.Add(Quantity{Part: m.units[i].part, Name: "flue-margin", Case: AllFull, Num: m.firings[i].Margin(m.states), Dim: lang.Pressure, Unit: "Pa", Formula: &FormulaFlueBalance, Inputs: m.inputs(c, i), At: m.units[i].connector.Span()})
	}
	most, duct := flue.Highest(m.states)
	c.Add(Quantity{
		Part: m.part, Name: "pressure", Stat: Most, Case: AllFull, Num: most, Dim: lang.Pressure, Unit: "Pa", Formula: &FormulaFlueBalance,
		Inputs: c.Inputs(Input{Name: "at", Text: m.pieces[duct].part.Label()}, Input{Name: "S_E", Num: m.common.SafetyFactor, Dim: lang.Ratio}, Input{Name: "wind", Num: m.common.Wind, Dim: lang.Pressure, Unit: "Pa"}),
	})
	m.pieceValues(c, AllFull)
}

// pieceValues stores velocity and pressure of each piece; of a header with its
// segments the greatest.
func (m *flueModel) pieceValues(c *Context, k Case) {
	for i := 0; i < len(m.states); {
		part := m.pieces[i].part
		velocity, pressure, at := 0.0, math.Inf(-1), i
		j := i
		for ; j < len(m.states) && m.pieces[j].part == part; j++ {
			if m.states[j].Velocity > velocity {
				velocity, at = m.states[j].Velocity, j
			}
			pressure = max(pressure, m.states[j].Start)
		}
		s := &m.states[at]
		bore := m.common.Ducts[at].Bore
		in := c.Inputs(
			Input{Name: "m", Num: s.MassFlow, Dim: lang.MassFlow, Unit: "g/s"}, Input{Name: "rho", Num: s.Density, Dim: lang.Density},
			Input{Name: "D", Num: bore, Dim: lang.Length, Unit: "mm"},
		)
		c.Add(Quantity{Part: part, Name: "velocity", Case: k, Num: velocity, Dim: lang.Velocity, Unit: "m/s", Formula: &FormulaFlueVelocity, Inputs: in})
		c.Add(Quantity{Part: part, Name: "pressure", Case: k, Num: pressure, Dim: lang.Pressure, Unit: "Pa", Formula: &FormulaFlueBalance, Inputs: in})
		i = j
	}
}

// oneByOne runs, for each unit, the case of it at minimum with the rest at full
// fire, alone at minimum, and stopped with the rest at full fire.
func (m *flueModel) oneByOne(c *Context) {
	highest := math.Inf(-1)
	coldest, coldestKnown := math.Inf(1), m.outlet
	for u := range m.units {
		unit := &m.units[u]
		if lack := m.lacking(u); lack != "" {
			c.Missing(unit.part, "flue-margin", Plain, OneLow, lack)
			c.Missing(unit.part, "flue-margin", Plain, OneAlone, lack)
			continue
		}
		for i := range m.units {
			m.set(i, &m.units[i].full)
		}
		m.set(u, &unit.low)
		if err := m.balance(); err == nil {
			most, _ := flue.Highest(m.states)
			highest = max(highest, most)
			c.Add(Quantity{Part: unit.part, Name: "flue-margin", Case: OneLow, Num: m.firings[u].Margin(m.states), Dim: lang.Pressure, Unit: "Pa", Formula: &FormulaFlueBalance, Inputs: m.inputs(c, u), At: unit.connector.Span()})
		}
		if len(m.units) > 1 {
			m.stop(u)
			if err := m.balance(); err == nil {
				back := m.firings[u].Back(m.states)
				c.Add(Quantity{
					Part: unit.part, Name: "flue-back-pressure", Case: FanFailed, Num: back, Dim: lang.Pressure, Unit: "Pa", Formula: &FormulaFlueBalance,
					Inputs: c.Inputs(Input{Name: "stopped", Text: unit.part.Label()}, Input{Name: "S_E", Num: m.common.SafetyFactor, Dim: lang.Ratio}),
				})
				m.damperOpen(c, u, back)
			}
		}
		for i := range m.units {
			m.stop(i)
		}
		m.set(u, &unit.low)
		if err := m.balance(); err == nil {
			c.Add(Quantity{Part: unit.part, Name: "flue-margin", Case: OneAlone, Num: m.firings[u].Margin(m.states), Dim: lang.Pressure, Unit: "Pa", Formula: &FormulaFlueBalance, Inputs: m.inputs(c, u), At: unit.connector.Span()})
			if out := m.states[len(m.states)-1].Out; coldestKnown {
				coldest = min(coldest, out)
			}
		} else {
			coldestKnown = false
		}
	}
	m.coldStart(c)
	m.openMargins(c)
	last := m.pieces[len(m.pieces)-1].part
	if coldestKnown && !math.IsInf(coldest, 1) {
		c.Add(Quantity{Part: last, Name: "outlet-temperature", Case: OneAlone, Num: coldest, Dim: lang.Temperature, Formula: &FormulaFlueOutlet, Inputs: c.Inputs(Input{Name: "cp", Num: m.common.HeatCapacity, Dim: lang.SpecificHeat})})
	} else {
		c.Missing(last, "outlet-temperature", Plain, OneAlone, "the heat loss of the flue's pieces (heat-loss)")
	}
	if !math.IsInf(highest, -1) {
		c.Add(Quantity{Part: m.part, Name: "pressure", Stat: Most, Case: OneLow, Num: highest, Dim: lang.Pressure, Unit: "Pa", Formula: &FormulaFlueBalance, Inputs: c.Inputs(Input{Name: "S_E", Num: m.common.SafetyFactor, Dim: lang.Ratio}, Input{Name: "wind", Num: m.common.Wind, Dim: lang.Pressure, Unit: "Pa"})})
	}
}

// coldStart lights each unit alone in a flue that is as cold as the air outside:
// nothing rises by itself, the fan alone must push.
func (m *flueModel) coldStart(c *Context) {
	for u := range m.units {
		unit := &m.units[u]
		if unit.full.missing != "" {
			c.Missing(unit.part, "flue-margin", Plain, ColdStart, unit.full.missing)
			continue
		}
		for i := range m.units {
			m.stop(i)
		}
		m.set(u, &unit.full)
		m.firings[u].Temperature = m.common.Outside
		if err := m.balance(); err == nil {
			c.Add(Quantity{Part: unit.part, Name: "flue-margin", Case: ColdStart, Num: m.firings[u].Margin(m.states), Dim: lang.Pressure, Unit: "Pa", Formula: &FormulaFlueBalance, Inputs: m.inputs(c, u), At: unit.connector.Span()})
		}
	}
}

// flueFalls stores the stated fall of every piece as a value to be judged.
func flueFalls(c *Context, part *plant.Part) {
	for _, p := range part.Parts {
		switch p.Kind {
		case "connector", "flue-header", "run":
			if v := p.Get("falls"); v.Known() {
				c.Add(Quantity{Part: p, Name: "fall", Num: v.Num, Dim: lang.Slope, Unit: "mm/m", Formula: &FormulaFall, Inputs: c.Inputs(Input{Name: "fall", Num: v.Num, Dim: lang.Slope}), At: v.Span()})
			} else {
				c.Missing(p, "fall", Plain, Always, "the fall of "+p.Label())
			}
		}
	}
}

// flueDewPoint stores the dew point of the products at the CO2 of full fire.
func flueDewPoint(c *Context, m *flueModel) {
	part := m.header
	if part == nil {
		part = m.part
	}
	if len(m.units) == 0 || m.common.Pressure == 0 {
		c.Missing(part, "dew-point", Plain, Always, "the units on the flue and the altitude")
		return
	}
	co2 := atRate(m.units[0].part.Child("flue-data").Children("co2"), "full")
	if !co2.Known() {
		c.Missing(part, "dew-point", Plain, Always, "the CO2 of "+m.units[0].part.Label()+" at full fire")
		return
	}
	fuel := &combustion.Methane
	if c.P.Block("basis").Child("gas").Get("fuel").Is("propane") {
		fuel = &combustion.Propane
	}
	burnt, err := combustion.Burn(fuel, co2.Num*100, 0)
	if err != nil {
		c.Missing(part, "dew-point", Plain, Always, err.Error())
		return
	}
	t, err := burnt.DewPoint(m.common.Pressure)
	if err != nil {
		c.Missing(part, "dew-point", Plain, Always, err.Error())
		return
	}
	c.Add(Quantity{
		Part: part, Name: "dew-point", Num: t, Dim: lang.Temperature, Formula: &FormulaDewPoint,
		Inputs: c.Inputs(Input{Name: "CO2", Num: co2.Num, Dim: lang.Ratio, Unit: "%"}, Input{Name: "x", Num: burnt.WaterFraction(), Dim: lang.Ratio}, Input{Name: "p", Num: m.common.Pressure, Dim: lang.Pressure}),
	})
}

// FormulaFlueHeat sums the heat input of the units on one flue.
var FormulaFlueHeat = Formula{Text: "sum of the heat inputs of the units on the flue", Source: cite.Source{Work: "sum of stated heat inputs; gross = net x 1.11 natural gas, 1.09 propane", Read: cite.Published, Note: "IGEM/UP/10, 2.1 note 4 prints the ratios"}}

// flueHeat stores the heat input of all units on the flue, net and gross.
func flueHeat(c *Context, m *flueModel) {
	sum := 0.0
	for i := range m.units {
		heat, ok := NetInput(c.P, m.units[i].part.Child("input"))
		if !ok {
			what := "the heat input of " + m.units[i].part.Label() + " with its basis"
			c.Missing(m.part, "input-net", Total, Always, what)
			c.Missing(m.part, "input-gross", Total, Always, what)
			return
		}
		sum += heat
	}
	in := c.Inputs(Input{Name: "units", Num: float64(len(m.units)), Dim: lang.Count})
	c.Add(Quantity{Part: m.part, Name: "input-net", Stat: Total, Num: sum, Dim: lang.Power, Formula: &FormulaFlueHeat, Inputs: in})
	c.Add(Quantity{Part: m.part, Name: "input-gross", Stat: Total, Num: sum * GrossToNet(c.P), Dim: lang.Power, Formula: &FormulaFlueHeat, Inputs: in})
}

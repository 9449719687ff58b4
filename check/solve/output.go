package solve

import (
	"math"

	"example.org/tundish/check/calc/water"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// FormulaUnitFlow is the design flow of a unit.
var FormulaUnitFlow = Formula{
	Text:   "V = P / (cp rho (t_flow - t_return)), properties at the mean temperature and 3 bar absolute",
	Source: cite.Source{Work: "heat balance of the water", Read: cite.Memory, Note: "physics; properties by IAPWS-IF97"},
}

// UnitOutput picks the output that a unit's data state for the temperatures of
// the plant: of several the one whose mean temperature is nearest. exact is
// false when none is stated for just these temperatures.
func UnitOutput(p *plant.Plant, u *plant.Part) (v plant.Value, exact bool) {
	primary := p.Block("basis").Get("primary")
	bestAt := math.Inf(1)
	for _, s := range u.Children("output") {
		o := s.First()
		if !o.Known() {
			continue
		}
		d := 1e3
		if at := s.Get("at"); at.Known() && primary.Known() {
			d = math.Abs(at.Num+at.Num2-primary.Num-primary.Num2) / 2
			if math.Abs(at.Num-primary.Num) < 0.6 && math.Abs(at.Num2-primary.Num2) < 0.6 {
				d = 0
			}
		}
		if d < bestAt {
			v, bestAt = o, d
		}
	}
	return v, bestAt == 0
}

// waterState is the water of the unit circuit at its mean temperature.
func waterState(p *plant.Plant) (s water.State, rise float64, missing string) {
	primary := p.Block("basis").Get("primary")
	if !primary.Known() {
		return s, 0, "the flow and return temperature in the basis (primary)"
	}
	rise = primary.Num - primary.Num2
	if rise <= 0 {
		return s, 0, "a return temperature below the flow temperature"
	}
	s, err := mediumAt(p, (primary.Num+primary.Num2)/2, "primary")
	if err != nil {
		return s, 0, err.Error()
	}
	return s, rise, ""
}

// mediumAt is the water of a side at a temperature in degC and 3 bar absolute.
func mediumAt(_ *plant.Plant, celsius float64, _ string) (water.State, error) {
	return water.At(celsius, 3e5)
}

// unitFlow stores and gives the design flow of a unit in m3/s; 0 when it is not
// known.
func unitFlow(c *Context, u *plant.Part, s water.State, rise float64, missing string) float64 {
	out, _ := c.output(u)
	switch {
	case missing != "":
		c.Missing(u, "design-flow", Plain, Always, missing)
		return 0
	case !out.Known():
		c.Missing(u, "design-flow", Plain, Always, "the output of "+u.Label())
		return 0
	}
	q := out.Num / (s.SpecificHeat * s.Density * rise)
	c.Add(Quantity{
		Part: u, Name: "design-flow", Num: q, Dim: lang.VolumeFlow, Unit: flowUnit(c.P), Formula: &FormulaUnitFlow,
		Inputs: c.Inputs(Input{Name: "P", Num: out.Num, Dim: lang.Power}, Input{Name: "t_flow - t_return", Num: rise, Dim: lang.TempDiff}, Input{Name: "cp", Num: s.SpecificHeat, Dim: lang.SpecificHeat}, Input{Name: "rho", Num: s.Density, Dim: lang.Density}),
	})
	return q
}

// flowUnit is the unit of water flows in the plant's jurisdiction.
func flowUnit(p *plant.Plant) string {
	if p.US() {
		return "gpm"
	}
	return "m3/h"
}

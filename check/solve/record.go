package solve

import (
	"example.org/tundish/check/calc/water"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// The formulas of a record: what a unit took in and gave off by its readings.
var (
	FormulaMeasuredInput  = Formula{Text: "P_in = V_gas CV gross", Source: cite.Source{Work: "heat in metered gas", Read: cite.Memory, Note: "physics; at metering conditions"}}
	FormulaMeasuredOutput = Formula{Text: "P_out = V cp rho (t_flow - t_return), properties at the mean temperature and 3 bar absolute", Source: FormulaUnitFlow.Source}
	FormulaMeasuredShare  = Formula{Text: "share = P_out / P_in", Source: FormulaUnitFlow.Source}
)

// solveRecord computes the heat balance of every unit that was commissioned,
// from the gas metered at maximum rate and the readings of the water.
func solveRecord(c *Context) {
	var fuel gasTree
	fuel.readFuel(c.P.Of.Block("basis"))
	value := fuel.fuel.value
	if !fuel.fuel.gross {
		value *= GrossToNet(c.P.Of)
	}
	for _, b := range c.P.ByKind("commissioned") {
		high, w := b.Child("high-fire"), b.Child("water")
		in, out := 0.0, 0.0
		if rate := high.Get("gas-rate"); rate.Known() && fuel.missing == "" {
			in = rate.Num * value
			c.Add(Quantity{
				Part: high, Name: "heat-input", Num: in, Dim: lang.Power, Unit: powerUnit(c.P.Of), Formula: &FormulaMeasuredInput,
				Inputs: c.Inputs(Input{Name: "V_gas", Num: rate.Num, Dim: lang.VolumeFlow, Unit: gasUnit(c.P.Of)}, Input{Name: "CV gross", Num: value, Dim: lang.HeatValue}),
			})
		}
		flow, back, rate := w.Get("flow"), w.Get("return"), w.Get("rate")
		if flow.Known() && back.Known() && rate.Known() && flow.Num > back.Num {
			s, err := water.At((flow.Num+back.Num)/2, 3e5)
			if err != nil {
				c.Missing(w, "output", Plain, Always, err.Error())
				continue
			}
			out = rate.Num * s.SpecificHeat * s.Density * (flow.Num - back.Num)
			c.Add(Quantity{
				Part: w, Name: "output", Num: out, Dim: lang.Power, Unit: powerUnit(c.P.Of), Formula: &FormulaMeasuredOutput,
				Inputs: c.Inputs(Input{Name: "V", Num: rate.Num, Dim: lang.VolumeFlow, Unit: flowUnit(c.P.Of)}, Input{Name: "t_flow - t_return", Num: flow.Num - back.Num, Dim: lang.TempDiff}, Input{Name: "cp", Num: s.SpecificHeat, Dim: lang.SpecificHeat}, Input{Name: "rho", Num: s.Density, Dim: lang.Density}),
			})
		}
		if in > 0 && out > 0 {
			c.Add(Quantity{
				Part: w, Name: "efficiency", Num: out / in, Dim: lang.Ratio, Unit: "%", Formula: &FormulaMeasuredShare,
				Inputs: c.Inputs(Input{Name: "P_out", Num: out, Dim: lang.Power, Unit: powerUnit(c.P.Of)}, Input{Name: "P_in", Num: in, Dim: lang.Power, Unit: powerUnit(c.P.Of)}),
			})
		}
	}
}

// Efficiency is the measured share of the gross heat input that went into the
// water of a commissioned unit; nil where a reading for it is missing.
func (r *Results) Efficiency(commissioned *plant.Part) *Quantity {
	if w := commissioned.Child("water"); w != nil {
		return r.Get(w, "efficiency", Always)
	}
	return nil
}

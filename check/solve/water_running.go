package solve

import (
	"math"

	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// Formulas of the running units.
var (
	FormulaPumpHead = Formula{Text: "head of the pump at the solved flow: curve at its speed, H = n2 H(q/n)", Source: FormulaNetwork.Source}
	FormulaPumpUse  = Formula{Text: "use = solved flow / last flow of the pump's curve at its speed", Source: FormulaNetwork.Source}
	FormulaAcross   = Formula{Text: "pressure of the flow header less that of the return header at the unit's take-offs, from the solved network", Source: FormulaNetwork.Source}
	FormulaRise     = Formula{Text: "rise = P/(cp rho V); V the solved flow, or the design flow where a variable pump without a setting reaches it", Source: FormulaUnitFlow.Source}
)

// runningFlow is what flows through a unit on site, from the solved flow: a pump
// of variable speed without a stated setting is set back to the design flow.
func (u *circuit) runningFlow(solved float64) float64 {
	if u.trimmed && u.design > 0 {
		return min(solved, u.design)
	}
	return solved
}

// running stores what the network gives for each set of running units.
func (h *hydraulics) running(f *unitFlows, group *plant.Part) {
	unit := flowUnit(h.c.P)
	for i := range h.units {
		u := &h.units[i]
		in := h.inputs(u)
		add := func(name string, c Case, num float64, d lang.Dimension, unit string, formula *Formula) {
			h.c.Add(Quantity{Part: u.unit, Name: name, Case: c, Num: num, Dim: d, Unit: unit, Formula: formula, Inputs: in, At: u.pump.Span()})
		}
		add("flow", AllFull, f.all[i], lang.VolumeFlow, unit, &FormulaNetwork)
		if math.IsNaN(f.alone[i]) {
			h.c.Missing(u.unit, "flow", Plain, OneAlone, "a water network that can be solved with "+u.unit.Label()+" alone")
		} else {
			add("flow", OneAlone, f.alone[i], lang.VolumeFlow, unit, &FormulaNetwork)
		}
		if len(h.units) > 1 && i != f.largest && !math.IsNaN(f.oneOff[i]) {
			add("flow", OneOff, f.oneOff[i], lang.VolumeFlow, unit, &FormulaNetwork)
		}
		add("header-pressure", AllFull, f.across[i], lang.Pressure, "kPa", &FormulaAcross)
		n := u.setting
		if pa, ok := u.head.at(f.all[i] / n); ok {
			add("pump-head", AllFull, pa*n*n, lang.Pressure, "kPa", &FormulaPumpHead)
		}
		end := u.head.flow[len(u.head.flow)-1] * n
		add("pump-use", AllFull, f.all[i]/end, lang.Ratio, "%", &FormulaPumpUse)
		add("pump-use", OneAlone, f.alone[i]/end, lang.Ratio, "%", &FormulaPumpUse)
		if out, _ := h.c.output(u.unit); out.Known() {
			q := u.runningFlow(f.all[i])
			h.c.Add(Quantity{
				Part: u.unit, Name: "rise", Case: AllFull, Num: out.Num / (h.state.SpecificHeat * h.state.Density * q), Dim: lang.TempDiff, Formula: &FormulaRise, At: u.pump.Span(),
				Inputs: h.c.Inputs(Input{Name: "P", Num: out.Num, Dim: lang.Power}, Input{Name: "V", Num: q, Dim: lang.VolumeFlow, Unit: unit}),
			})
		}
	}
	h.spread(f.all, -1, AllFull, group)
	switch {
	case len(h.units) < 2:
	case math.IsNaN(f.oneOff[(f.largest+1)%len(h.units)]):
		h.c.Missing(group, "flow", Total, OneOff, "a water network that can be solved with the largest unit off")
	default:
		h.spread(f.oneOff, f.largest, OneOff, group)
	}
}

// spread stores the statistics over the units that run; off is the one that does
// not, -1 for none.
func (h *hydraulics) spread(q []float64, off int, c Case, group *plant.Part) {
	least, most, sum, n := math.Inf(1), 0.0, 0.0, 0.0
	for i, v := range q {
		if i != off {
			least, most, sum, n = min(least, v), max(most, v), sum+v, n+1
		}
	}
	unit := flowUnit(h.c.P)
	add := func(stat Stat, v float64) {
		h.c.Add(Quantity{Part: group, Name: "flow", Stat: stat, Case: c, Num: v, Dim: lang.VolumeFlow, Unit: unit, Formula: &FormulaNetwork})
	}
	add(Least, least)
	add(Most, most)
	add(Mean, sum/n)
	add(Total, sum)
	add(Spread, most-least)
	h.c.Add(Quantity{
		Part: group, Name: "flow-balance", Case: c, Num: least / most, Dim: lang.Ratio, Unit: "%", Formula: &FormulaBalance,
		Inputs: h.c.Inputs(Input{Name: "least", Num: least, Dim: lang.VolumeFlow, Unit: unit}, Input{Name: "most", Num: most, Dim: lang.VolumeFlow, Unit: unit}),
	})
}

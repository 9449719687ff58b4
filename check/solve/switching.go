package solve

import (
	"math"

	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// Formulas of the switching of units.
var (
	FormulaSwitchingGap = Formula{
		Text:   "gap = bring-on - release (P1 + P2)/P1, P1 the smallest unit that runs alone and P2 the largest other: between the loads at which the second unit joins and leaves, in outputs of the first",
		Source: cite.Source{Work: "sequence control of several units", Read: cite.Memory, Note: "arithmetic of the switching points; further units lie farther apart"},
	}
	FormulaLeastShare = Formula{Text: "least input / greatest input, the largest of all units", Source: sourceCapacity}
)

// solveSwitching computes how far the switching points of the sequence lie apart
// and how far each unit turns down.
func solveSwitching(c *Context, group *plant.Part) {
	controls := c.P.Block("controls")
	on, off := controls.Child("bring-on").Get("at"), controls.Child("release").Get("at")
	units := c.P.Units()
	if len(units) < 2 || !off.Known() {
		return
	}
	share, lack := 0.0, ""
	first, second, largest := math.Inf(1), 0.0, 0.0 // smallest, largest beside it
	for _, u := range units {
		full, ok := NetInput(c.P, u.Child("input"))
		low, okLow := NetInput(c.P, u.Child("input-low"))
		if !ok || !okLow || full <= 0 {
			lack = "input and least input of " + u.Label()
		}
		share = max(share, low/full)
		q := c.Get(u, "output", Always)
		if !q.Known() {
			first = math.NaN()
			continue
		}
		if q.Num < first {
			first = q.Num
		}
		if q.Num > largest {
			largest, second = q.Num, largest
		} else {
			second = max(second, q.Num)
		}
	}
	if lack != "" {
		c.Missing(group, "least-share", Most, Always, lack)
	} else {
		c.Add(Quantity{Part: group, Name: "least-share", Stat: Most, Num: share, Dim: lang.Ratio, Unit: "%", Formula: &FormulaLeastShare, Inputs: c.Inputs(Input{Name: "units", Num: float64(len(units)), Dim: lang.Count})})
	}
	if !on.Known() {
		return
	}
	if math.IsNaN(first) {
		c.Missing(group, "switching-gap", Plain, Always, "the output of every unit")
		return
	}
	other := largest
	if first == largest {
		other = second
	}
	c.Add(Quantity{
		Part: group, Name: "switching-gap", Num: on.Num - off.Num*(first+other)/first, Dim: lang.Ratio, Unit: "%", Formula: &FormulaSwitchingGap,
		Inputs: c.Inputs(Input{Name: "bring-on", Num: on.Num, Dim: lang.Ratio, Unit: "%"}, Input{Name: "release", Num: off.Num, Dim: lang.Ratio, Unit: "%"}, Input{Name: "P1", Num: first, Dim: lang.Power, Unit: powerUnit(c.P)}, Input{Name: "P2", Num: other, Dim: lang.Power, Unit: powerUnit(c.P)}),
	})
}

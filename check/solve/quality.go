package solve

import (
	"math"

	"example.org/tundish/check/calc/treatment"
	"example.org/tundish/lang"
)

// FormulaHardness picks the greatest hardness of the fill water.
var FormulaHardness = Formula{Text: "by the output of all units and the water content on the smallest unit", Source: treatment.SourceVDI2021}

// solveQuality computes how hard the fill water of the units' circuit may be.
func solveQuality(c *Context) {
	block := c.P.Block("water-quality")
	if block == nil {
		return
	}
	content := circuitContent(c.P, Primary)
	total, smallest, known := 0.0, math.Inf(1), len(c.P.Units()) > 0
	for _, u := range c.P.Units() {
		out, ok := hottestOutput(u)
		known = known && ok
		total, smallest = total+out, math.Min(smallest, out)
	}
	switch {
	case !content.Known():
		c.Missing(block, "fill-hardness-most", Plain, Always, "the water content of the primary circuit (content)")
		return
	case !known:
		c.Missing(block, "fill-hardness-most", Plain, Always, "the output of every unit")
		return
	}
	per, err := treatment.PerKW(content.Num/liter, smallest/1000)
	if err == nil {
		var most float64
		if most, _, err = treatment.Limit(treatment.VDI2021, total/1000, per); err == nil {
			c.Add(Quantity{
				Part: block, Name: "fill-hardness-most", Num: most, Dim: lang.Hardness, Unit: "mmol/l", Formula: &FormulaHardness,
				Inputs: c.Inputs(Input{Name: "outputs", Num: total, Dim: lang.Power, Unit: powerUnit(c.P)}, Input{Name: "content", Num: content.Num, Dim: lang.Volume, Unit: "l"}, Input{Name: "smallest unit", Num: smallest, Dim: lang.Power, Unit: powerUnit(c.P)}),
			})
			return
		}
	}
	c.Missing(block, "fill-hardness-most", Plain, Always, "a plant that the table covers: "+err.Error())
}

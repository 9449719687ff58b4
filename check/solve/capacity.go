package solve

import (
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var sourceCapacity = cite.Source{Work: "sum and quotient of stated loads and outputs", Read: cite.Memory, Note: "definition"}

// Formulas of load and capacity.
var (
	FormulaLoad     = Formula{Text: "sum of the stated loads", Source: sourceCapacity}
	FormulaOutput   = Formula{Text: "sum of the units' outputs at the flow and return temperature of the plant", Source: sourceCapacity}
	FormulaOneOff   = Formula{Text: "sum of outputs less the largest unit", Source: sourceCapacity}
	FormulaCover    = Formula{Text: "cover = outputs with the units in reserve off / load", Source: sourceCapacity}
	FormulaRatio    = Formula{Text: "ratio = outputs without the units in reserve / load", Source: sourceCapacity}
	FormulaTurndown = Formula{Text: "turndown = sum of greatest inputs / least input of any one unit", Source: sourceCapacity}
	FormulaLowest   = Formula{Text: "least heat of the plant = least input of any one unit x its output over input", Source: sourceCapacity}
	FormulaInput    = Formula{Text: "sum of the units' heat inputs, net; gross = net x ratio of the gas", Source: cite.Source{Work: "EN 437", Read: cite.Memory, Note: "gross to net 1.11 natural gas, 1.09 propane"}}
	FormulaStarts   = Formula{
		Text:   "starts = P_least / (4 C dT), C = water x 4.1 MJ/(m3.K): the worst hour, at half of the least heat",
		Source: cite.Source{Work: "heat balance of a cycling unit", Read: cite.Memory, Note: "physics; the worst load is half of the least heat"},
	}
)

// solveCapacity computes load, outputs, inputs, cover and turndown.
func solveCapacity(c *Context) {
	basis, group := c.P.Block("basis"), c.P.UnitGroup()
	load, loadLack := solveLoad(c, basis)
	if group == nil {
		return
	}
	total, largest, lack := solveOutputs(c, group)
	solveInputs(c, group)
	solveSwitching(c, group)
	if lack == "" {
		lack = loadLack
	}
	reserve := 0.0
	if lack == "" {
		lack = openValue(basis, "standby")
	}
	if v := basis.Get("standby"); v.Known() {
		reserve = v.Num
	}
	if lack != "" {
		c.Missing(group, "cover", Plain, OneOff, lack)
		c.Missing(group, "installed-ratio", Plain, Always, lack)
		return
	}
	without := total - largestOf(c, int(reserve+0.5))
	in := c.Inputs(Input{Name: "outputs", Num: total, Dim: lang.Power}, Input{Name: "load", Num: load, Dim: lang.Power}, Input{Name: "units in reserve", Num: reserve, Dim: lang.Count})
	c.Add(Quantity{Part: group, Name: "installed-ratio", Num: without / load, Dim: lang.Ratio, Unit: "%", Formula: &FormulaRatio, Inputs: in})
	c.Add(Quantity{Part: group, Name: "cover", Case: OneOff, Num: (total - largest) / load, Dim: lang.Ratio, Unit: "%", Formula: &FormulaCover, Inputs: in})
	c.Add(Quantity{Part: group, Name: "reserve-cover", Num: without / load, Dim: lang.Ratio, Unit: "%", Formula: &FormulaCover, Inputs: in})
}

func solveLoad(c *Context, basis *plant.Part) (load float64, lack string) {
	if basis == nil {
		return 0, "a basis block"
	}
	loads := basis.Children("load")
	switch {
	case c.P.Damaged("basis"):
		lack = "a file that can be read whole"
	case len(loads) == 0:
		lack = "a load in the basis"
	}
	for _, l := range loads {
		v := l.Get("load")
		if !v.Known() {
			lack = "the load " + l.Label()
			break
		}
		load += v.Num
	}
	if lack != "" {
		c.Missing(basis, "load", Plain, Always, lack)
		return 0, lack
	}
	c.Add(Quantity{Part: basis, Name: "load", Num: load, Dim: lang.Power, Formula: &FormulaLoad, Inputs: c.Inputs(Input{Name: "parts", Num: float64(len(loads)), Dim: lang.Count})})
	if load <= 0 {
		return 0, "a load above zero"
	}
	return load, ""
}

func solveOutputs(c *Context, group *plant.Part) (total, largest float64, lack string) {
	if c.P.Damaged("units") {
		lack = "a file that can be read whole"
	}
	for _, u := range c.P.Units() {
		v, exact := c.output(u)
		if !v.Known() {
			lack = "the output of " + u.Label()
			c.Missing(u, "output", Plain, Always, lack)
			continue
		}
		at := "as stated for these temperatures"
		if !exact {
			at = "stated for the nearest temperatures"
		}
		c.Add(Quantity{Part: u, Name: "output", Num: v.Num, Dim: lang.Power, Formula: &FormulaOutput, Inputs: c.Inputs(Input{Name: "output", Text: at})})
		total += v.Num
		largest = max(largest, v.Num)
	}
	if lack != "" {
		c.Missing(group, "output", Total, Always, lack)
		c.Missing(group, "output", Total, OneOff, lack)
		return 0, 0, lack
	}
	in := c.Inputs(Input{Name: "units", Num: float64(len(c.P.Units())), Dim: lang.Count}, Input{Name: "largest", Num: largest, Dim: lang.Power})
	c.Add(Quantity{Part: group, Name: "output", Stat: Total, Num: total, Dim: lang.Power, Formula: &FormulaOutput, Inputs: in})
	c.Add(Quantity{Part: group, Name: "output", Stat: Total, Case: OneOff, Num: total - largest, Dim: lang.Power, Formula: &FormulaOneOff, Inputs: in})
	return total, largest, ""
}

// largestOf sums the outputs of the n largest units.
func largestOf(c *Context, n int) float64 {
	sum, below := 0.0, 1e300
	for range n {
		best, count := 0.0, 0
		for _, u := range c.P.Units() {
			v := c.Get(u, "output", Always)
			if !v.Known() || v.Num >= below {
				continue
			}
			switch {
			case v.Num > best:
				best, count = v.Num, 1
			case v.Num == best:
				count++
			}
		}
		if count == 0 {
			break
		}
		if n >= count {
			sum += best * float64(count)
			n -= count
			below = best
		} else {
			return sum + best*float64(n)
		}
		if n <= 0 {
			break
		}
	}
	return sum
}

func solveInputs(c *Context, group *plant.Part) {
	sum, missing := netInputOfAll(c.P)
	least := 1e300
	var leastUnit *plant.Part
	for _, u := range c.P.Units() {
		low, ok := NetInput(c.P, u.Child("input-low"))
		if !ok {
			leastUnit = nil
			least = -1
			break
		}
		if low < least {
			least, leastUnit = low, u
		}
	}
	if missing != "" {
		c.Missing(group, "input-net", Total, Always, missing)
		c.Missing(group, "input-gross", Total, Always, missing)
		c.Missing(group, "turndown", Plain, Always, missing)
		return
	}
	in := c.Inputs(Input{Name: "units", Num: float64(len(c.P.Units())), Dim: lang.Count}, Input{Name: "gross to net", Num: GrossToNet(c.P), Dim: lang.Ratio})
	c.Add(Quantity{Part: group, Name: "input-net", Stat: Total, Num: sum, Dim: lang.Power, Formula: &FormulaInput, Inputs: in})
	c.Add(Quantity{Part: group, Name: "input-gross", Stat: Total, Num: sum * GrossToNet(c.P), Dim: lang.Power, Formula: &FormulaInput, Inputs: in})
	if leastUnit == nil {
		c.Missing(group, "turndown", Plain, Always, "the least input of every unit with its basis")
		c.Missing(group, "least-heat", Plain, Always, "the least input of every unit with its basis")
		return
	}
	li := c.Inputs(Input{Name: "sum of inputs", Num: sum, Dim: lang.Power}, Input{Name: "least input", Num: least, Dim: lang.Power})
	c.Add(Quantity{Part: group, Name: "turndown", Num: sum / least, Dim: lang.Ratio, Formula: &FormulaTurndown, Inputs: li})
	full, ok := NetInput(c.P, leastUnit.Child("input"))
	out, _ := c.output(leastUnit)
	if !ok || !out.Known() || full <= 0 {
		c.Missing(group, "least-heat", Plain, Always, "output and input of "+leastUnit.Label())
		return
	}
	heat := least * out.Num / full
	c.Add(Quantity{Part: group, Name: "least-heat", Num: heat, Dim: lang.Power, Formula: &FormulaLowest, Inputs: li})
	startsPerHour(c, group, heat)
}

// heatOfWater is the heat of water by volume and kelvin in J/(m3.K): 978 kg/m3 x
// 4190 J/(kg.K) at 70 degC.
const heatOfWater = 4.1e6

// cycleStore is the water in m3 and the switching difference in K that a cycling
// unit warms and lets cool: the unit circuit with a buffer.
func cycleStore(p *plant.Plant) (volume, swing float64, lack string) {
	dT := p.Block("controls").Child("cycling").Get("swing")
	if !dT.Known() || dT.Num <= 0 {
		return 0, 0, "the switching difference (cycling swing)"
	}
	known := false
	if s := p.Block("safety"); s != nil {
		for _, v := range s.Children("content") {
			if v.Get("side").Is("primary") && v.First().Known() {
				volume, known = volume+v.First().Num, true
			}
		}
	}
	for _, b := range p.ByKind("buffer") {
		if v := b.Get("volume"); v.Known() {
			volume, known = volume+v.Num, true
		}
	}
	if !known || volume <= 0 {
		return 0, 0, "the water content of the unit circuit"
	}
	return volume, dT.Num, ""
}

// startsPerHour estimates the cycling of the last unit at half of its least
// heat, from the water of the unit circuit and a buffer.
func startsPerHour(c *Context, group *plant.Part, heat float64) {
	volume, swing, lack := cycleStore(c.P)
	if lack != "" {
		c.Missing(group, "starts", Plain, Always, lack)
		return
	}
	c.Add(Quantity{
		Part: group, Name: "starts", Num: heat / (4 * volume * heatOfWater * swing), Dim: lang.Frequency, Unit: "starts/h", Formula: &FormulaStarts,
		Inputs: c.Inputs(Input{Name: "P_least", Num: heat, Dim: lang.Power}, Input{Name: "water", Num: volume, Dim: lang.Volume}, Input{Name: "dT", Num: swing, Dim: lang.TempDiff}),
	})
}

package solve

import (
	"math"

	"example.org/tundish/check/calc/combustion"
	"example.org/tundish/check/calc/condensate"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// Formulas of the condensate values.
var (
	FormulaCondensate = Formula{Text: "m = all the water of the products x heat input: the theoretical most", Source: combustion.SourceCondensate}
	FormulaTrap       = Formula{Text: "held = (seal - 25 mm) x 9.81 Pa/mm; margin = held - pressure in the worst firing case", Source: condensate.SourceTrap}
	FormulaDrain      = Formula{Text: "Q = A/n R^(2/3) sqrt(fall), half full, n = 0.011", Source: condensate.SourceManning}
)

// waterDensity of cold condensate in kg/m3.
const waterDensity = 1000

// solveCondensate computes the condensate values of the plant.
func solveCondensate(c *Context) {
	if block := c.P.Block("condensate"); block != nil { // a unit's trap is judged without it
		neededCapacity(c, block)
	}
	for _, t := range c.P.ByKind("flue-trap") {
		ref, found := t.Ref("from")
		if !found {
			c.Missing(t, "seal-margin", Plain, Always, "what drains into "+t.Label())
			continue
		}
		trapMargin(c, t, t, worstPressure(c, ref.Part))
	}
	for _, u := range c.P.Units() {
		if t := u.Child("trap"); t != nil && !t.First().Absent() {
			trapMargin(c, t, t, unitTrapPressure(u))
		}
	}
	for _, pipe := range c.P.ByKind("condensate-pipe") {
		drainCapacity(c, pipe)
	}
}

// neededCapacity is what each neutralizer must treat: the condensate of all units.
func neededCapacity(c *Context, block *plant.Part) {
	rate, ok := condensateRate(c, block)
	for _, n := range c.P.ByKind("neutraliser") {
		if ok {
			c.Add(Quantity{Part: n, Name: "needed-capacity", Num: rate, Dim: lang.VolumeFlow, Unit: "l/h", Formula: &FormulaCondensate})
		} else {
			c.Missing(n, "needed-capacity", Plain, Always, "the heat input of every unit")
		}
	}
}

func condensateRate(c *Context, block *plant.Part) (float64, bool) {
	heat, missing := netInputOfAll(c.P)
	if missing != "" {
		c.Missing(block, "rate", Plain, AllFull, missing)
		return 0, false
	}
	fuel := &combustion.Methane
	if c.P.Block("basis").Child("gas").Get("fuel").Is("propane") {
		fuel = &combustion.Propane
	}
	burnt, err := combustion.Burn(fuel, 9, 0)
	if err != nil {
		c.Missing(block, "rate", Plain, AllFull, err.Error())
		return 0, false
	}
	perHeat := burnt.MostCondensate()
	rate := perHeat * heat / waterDensity
	c.Add(Quantity{
		Part: block, Name: "rate", Case: AllFull, Num: rate, Dim: lang.VolumeFlow, Unit: "l/h", Formula: &FormulaCondensate,
		Inputs: c.Inputs(Input{Name: "heat input, net", Num: heat, Dim: lang.Power}, Input{Name: "water by heat", Num: perHeat * 3.6e6, Dim: lang.NoDimension, Text: lang.Num(perHeat*3.6e6, 4) + " kg/kWh net"}),
	})
	return rate, true
}

// worstPressure is the greatest pressure or suction in Pa of a piece of flue
// over the firing cases; not a number when it is not known.
func worstPressure(c *Context, piece *plant.Part) float64 {
	q := c.Get(piece, "pressure", AllFull)
	if !q.Known() {
		return math.NaN()
	}
	worst := math.Abs(q.Num)
	if fl := piece.Owner; fl != nil {
		if q := c.Group(fl, "pressure", Most, OneLow); q.Known() {
			worst = max(worst, q.Num)
		}
	}
	return worst
}

// unitTrapPressure is the pressure that a unit's own trap must hold: what its
// fan can push.
func unitTrapPressure(u *plant.Part) float64 {
	if v := u.Child("fan-pressure").Child("full").First(); v.Known() {
		return v.Num
	}
	return math.NaN()
}

func trapMargin(c *Context, part, trap *plant.Part, pressure float64) {
	seal := trap.Get("seal")
	switch {
	case !seal.Known():
		c.Missing(part, "seal-margin", Plain, Always, "the water seal of "+trap.Label())
		return
	case math.IsNaN(pressure):
		c.Missing(part, "seal-margin", Plain, Always, "the pressure on "+trap.Label())
		return
	}
	held, err := condensate.HeldPressure(seal.Num)
	if err != nil {
		c.Missing(part, "seal-margin", Plain, Always, err.Error())
		return
	}
	c.Add(Quantity{
		Part: part, Name: "seal-margin", Num: held - pressure, Dim: lang.Pressure, Unit: "Pa", Formula: &FormulaTrap, At: seal.Span(),
		Inputs: c.Inputs(Input{Name: "seal", Num: seal.Num, Dim: lang.Length, Unit: "mm"}, Input{Name: "pressure", Num: pressure, Dim: lang.Pressure, Unit: "Pa"}),
	})
}

// drainCapacity is what a drain carries half full, against what can come.
func drainCapacity(c *Context, pipe *plant.Part) {
	bore, falls := DrainBore(pipe), pipe.Get("falls")
	switch {
	case bore == 0:
		c.Missing(pipe, "capacity", Plain, Always, "the size of "+pipe.Label())
		return
	case !falls.Known():
		c.Missing(pipe, "capacity", Plain, Always, "the fall of "+pipe.Label())
		return
	}
	q, err := condensate.DrainCapacity(bore, falls.Num, 0.5)
	if err != nil {
		c.Missing(pipe, "capacity", Plain, Always, err.Error())
		return
	}
	c.Add(Quantity{
		Part: pipe, Name: "capacity", Num: q, Dim: lang.VolumeFlow, Unit: "l/h", Formula: &FormulaDrain,
		Inputs: c.Inputs(Input{Name: "bore", Num: bore, Dim: lang.Length, Unit: "mm"}, Input{Name: "fall", Num: falls.Num, Dim: lang.Slope}),
	})
}

// DrainBore is the bore of a condensate pipe in m: stated, or its nominal size;
// 0 when neither is known.
func DrainBore(pipe *plant.Part) float64 {
	if v := pipe.Get("bore"); v.Known() {
		return v.Num
	}
	if v := pipe.Get("size"); v.Known() {
		return v.Num
	}
	return 0
}

package solve

import (
	"math"

	"example.org/tundish/check/calc/pressuretest"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// Formulas of the tests.
var (
	FormulaStrength = Formula{Text: "p = 1.5 x greatest working pressure", Source: pressuretest.SourceWater}
	FormulaTestUS   = Formula{Text: "p = 1.5 x working pressure, at least 3 psi", Source: pressuretest.SourceUSGas}
	FormulaWeakest  = Formula{Text: "least rating of the parts that are not shut off in the test", Source: cite.Source{Work: "pressure rating of the part", Read: cite.Published}}
)

// solveTests computes for each strength test of the water pipes the pressure
// that it needs and the rating of the weakest part that stays in it.
func solveTests(c *Context) {
	gasTestUS(c)
	for _, s := range c.P.Block("tests").Children("strength") {
		circuits := testedCircuits(c.P, s)
		if len(circuits) == 0 {
			continue
		}
		neededPressure(c, s, circuits)
		weakestRating(c, s, circuits)
	}
}

// testedCircuits are the water circuits that a test speaks of. Behind a separator
// there is one circuit only.
func testedCircuits(p *plant.Plant, s *plant.Part) []Circuit {
	var first, second bool
	for _, ref := range s.Subjects() {
		if ref.Port != "" { // a side of an exchanger
			first, second = first || ref.Port == "primary", second || ref.Port == "secondary"
			continue
		}
		for x := ref.Part; x != nil; x = x.Owner {
			first = first || x.Kind == "headers" || x.Kind == "unit"
			second = second || x.Kind == "secondary"
		}
	}
	var out []Circuit
	if first || second && p.One("exchanger") == nil {
		out = append(out, Primary)
	}
	if second && p.One("exchanger") != nil {
		out = append(out, Secondary)
	}
	return out
}

// neededPressure is by the greatest working pressure: the lowest high-pressure
// cut-out, else the lowest safety valve.
func neededPressure(c *Context, s *plant.Part, circuits []Circuit) {
	working := 0.0
	for _, k := range circuits {
		low := LowestRelief(c.P, k)
		if k == Primary {
			cut, open := math.Inf(1), false
			take := func(v plant.Value) {
				if v.Known() {
					cut = math.Min(cut, v.Num)
				}
				open = open || v.Open()
			}
			take(c.P.Block("safety").Child("pressurisation").Get("high"))
			for _, u := range c.P.Units() {
				take(u.Child("high-pressure").First())
			}
			if open { // it may be lower than all that are known
				c.Missing(s, "needed-pressure", Plain, Always, "the greatest working pressure: every high-pressure cut-out")
				return
			}
			if !math.IsInf(cut, 1) && (low == 0 || cut < low) {
				low = cut
			}
		}
		if low == 0 {
			c.Missing(s, "needed-pressure", Plain, Always, "the greatest working pressure: a high-pressure cut-out or a safety valve of the "+string(k)+" circuit")
			return
		}
		working = math.Max(working, low)
	}
	bar, err := pressuretest.Water(working/1e5, pressuretest.Usual)
	if err != nil {
		c.Missing(s, "needed-pressure", Plain, Always, "a test that the sum covers: "+err.Error())
		return
	}
	c.Add(Quantity{Part: s, Name: "needed-pressure", Num: bar * 1e5, Dim: lang.Pressure, Unit: pressureUnit(c.P), Formula: &FormulaStrength, Inputs: c.Inputs(Input{Name: "working pressure", Num: working, Dim: lang.Pressure, Unit: pressureUnit(c.P)})})
}

func pressureUnit(p *plant.Plant) string {
	if p.US() {
		return "psi"
	}
	return "bar"
}

// weakestRating looks at what the text does not say to be shut off: units, safety
// valves, vessels and exchangers. A safety valve on the unit's side goes with its
// unit. Without a known rating below the test pressure an unknown one leaves the
// answer open.
func weakestRating(c *Context, s *plant.Part, circuits []Circuit) {
	least, which, open := math.Inf(1), "", ""
	take := func(v plant.Value, num float64, name, needs string) {
		switch {
		case v.Known():
			if num < least {
				least, which = num, name
			}
		case open == "":
			open = needs
		}
	}
	units, relief, vessels := !s.Has("units-isolated"), !s.Has("relief-isolated"), !s.Has("vessels-isolated")
	for _, k := range circuits {
		if k == Primary {
			for _, u := range c.P.Units() {
				if units {
					v := u.Child("water-pressure").First()
					take(v, v.Num2, u.Label(), "the water pressure that "+u.Label()+" bears (water-pressure)")
				}
				if r := u.Child("relief"); r != nil && relief && (units || !r.Get("place").Is("unit-side")) {
					v, needs := r.Get("set-pressure"), "the set pressure of the safety valve of "+u.Label()
					if !units && r.Get("place").Open() { // it may be shut off with its unit
						v, needs = plant.Value{}, "on which side of its isolating valves the safety valve of "+u.Label()+" stands"
					}
					take(v, v.Num, "the safety valve of "+u.Label(), needs)
				}
			}
		}
		for _, r := range c.P.Block("safety").Children("relief") {
			if relief && ReliefCircuit(r) == k {
				v := r.Get("set-pressure")
				take(v, v.Num, r.Label(), "the set pressure of "+r.Label())
			}
		}
		for _, v := range c.P.Block("safety").Children("vessel") {
			side := v.Get("side")
			if vessels && (side.Is(string(k)) || !side.Known() && k == Primary) {
				r := v.Get("rating")
				take(r, r.Num, v.Label(), "the rating of "+v.Label()+" (rating), or that it is shut off (vessels-isolated)")
			}
		}
	}
	for _, e := range c.P.ByKind("exchanger") {
		if v := e.Child("water-pressure").First(); v.Known() {
			take(v, v.Num2, e.Label(), "")
		}
	}
	pressure := s.Get("pressure")
	over := pressure.Known() && !math.IsInf(least, 1) && pressure.Num > least*(1+1e-6)
	switch {
	case open != "" && !over:
		c.Missing(s, "weakest-rating", Plain, Always, open)
	case !math.IsInf(least, 1):
		c.Add(Quantity{Part: s, Name: "weakest-rating", Num: least, Dim: lang.Pressure, Unit: pressureUnit(c.P), Formula: &FormulaWeakest, Inputs: c.Inputs(Input{Name: "part", Text: which})})
	}
}

// gasTestUS stores the pressure of the test that the US code asks for.
func gasTestUS(c *Context) {
	const psi = 6894.757293168
	run, supply := c.P.Block("gas-run"), c.P.Block("basis").Get("supply")
	if !c.P.US() || run == nil {
		return
	}
	if !supply.Known() {
		c.Missing(run, "test-pressure", Plain, Always, "the gas pressure at the start of the run (supply)")
		return
	}
	p, err := pressuretest.USGas(supply.Num / psi)
	if err != nil {
		c.Missing(run, "test-pressure", Plain, Always, err.Error())
		return
	}
	c.Add(Quantity{Part: run, Name: "test-pressure", Num: p * psi, Dim: lang.Pressure, Unit: "psi", Formula: &FormulaTestUS, Inputs: c.Inputs(Input{Name: "working pressure", Num: supply.Num, Dim: lang.Pressure, Unit: "psi"})})
}

package solve

import (
	"math"

	"example.org/tundish/check/calc/valve"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// Formulas of the safety valves and their discharge.
var (
	FormulaReliefStated = Formula{Text: "the capacity that is stated for the valve", Source: cite.Source{Work: "the specification", Read: cite.Published}}
	FormulaReliefSeat   = Formula{Text: "P = 1.26 kW/mm2 x A0 x alpha at 3 bar, hot water up to 120 degC", Source: valve.SourceAD2000}
	FormulaReliefSize   = Formula{Text: "capacity by the nominal size of the inlet, at 2.5 or 3 bar", Source: valve.SourceNominalSteps}
	FormulaReliefNeed   = Formula{Text: "the output of the unit at the hottest temperatures that it states: it does not condense when its valve lifts", Source: valve.SourceAD2000}
	FormulaReliefAll    = Formula{Text: "the outputs of all units together, which the exchanger may pass on", Source: valve.SourceAD2000}
	FormulaDischargeUS  = Formula{Text: "not smaller than the outlet of the largest valve", Source: cite.Source{Work: "International Mechanical Code", Clause: "1006.6", Read: cite.Published}}
	FormulaDischarge    = Formula{Text: "one size over the valve's inlet up to 2 m and 2 bends, two sizes up to 4 m and 3 bends", Source: valve.SourceDischarge}
)

// solveReliefs computes what each safety valve relieves and what it must.
func solveReliefs(c *Context, safety *plant.Part) {
	all, known := 0.0, true
	for _, u := range c.P.Units() {
		most, ok := hottestOutput(u)
		all, known = all+most, known && ok
		r := u.Child("relief")
		if r == nil || r.First().Absent() {
			continue
		}
		reliefCapacity(c, r)
		if ok {
			c.Add(Quantity{Part: r, Name: "relief-need", Num: most, Dim: lang.Power, Unit: powerUnit(c.P), Formula: &FormulaReliefNeed})
		} else {
			c.Missing(r, "relief-need", Plain, Always, "the output of "+u.Label())
		}
	}
	if safety == nil {
		return
	}
	for _, r := range safety.Children("relief") {
		reliefCapacity(c, r)
		// Only behind an exchanger must a valve of the plant relieve all heat: on
		// the primary side each unit has its own.
		switch {
		case ReliefCircuit(r) != Secondary || c.P.One("exchanger") == nil:
		case known:
			c.Add(Quantity{Part: r, Name: "relief-need", Num: all, Dim: lang.Power, Unit: powerUnit(c.P), Formula: &FormulaReliefAll})
		default:
			c.Missing(r, "relief-need", Plain, Always, "the output of every unit")
		}
	}
	for _, d := range safety.Children("discharge") {
		dischargeSize(c, d)
	}
}

// hottestOutput is the output of a unit at the hottest mean temperature that it
// states.
func hottestOutput(u *plant.Part) (out float64, ok bool) {
	hottest := math.Inf(-1)
	for _, o := range u.Children("output") {
		v := o.First()
		if !v.Known() {
			continue
		}
		mean := 0.0
		if at := o.Get("at"); at.Known() {
			mean = (at.Num + at.Num2) / 2
		}
		if mean > hottest {
			hottest, out, ok = mean, v.Num, true
		}
	}
	return out, ok
}

func powerUnit(p *plant.Plant) string {
	if p.US() {
		return "MBH"
	}
	return "kW"
}

func reliefCapacity(c *Context, r *plant.Part) {
	set := r.Get("set-pressure")
	add := func(kw float64, f *Formula, in ...Input) {
		c.Add(Quantity{Part: r, Name: "relief-capacity", Num: kw * 1000, Dim: lang.Power, Unit: powerUnit(c.P), Formula: f, Inputs: c.Inputs(in...)})
	}
	if v := r.Get("rated"); v.Known() {
		add(v.Num/1000, &FormulaReliefStated)
		return
	}
	if a, k := r.Get("seat"), r.Get("coefficient"); a.Known() && k.Known() && set.Known() && math.Abs(set.Num-3*barPa) < 1 {
		if kw, err := valve.ADCapacity(a.Num*1e6, k.Num); err == nil {
			add(kw, &FormulaReliefSeat, Input{Name: "A0", Num: a.Num, Dim: lang.Area, Unit: "mm2"}, Input{Name: "alpha", Num: k.Num, Dim: lang.Ratio})
			return
		}
	}
	size := r.Get("size")
	switch {
	case !set.Known():
		c.Missing(r, "relief-capacity", Plain, Always, "the set pressure of "+reliefName(r))
		return
	case !size.Known():
		c.Missing(r, "relief-capacity", Plain, Always, "the size or the stated capacity (rated) of "+reliefName(r))
		return
	}
	s, err := valve.SizeOf(int(math.Round(size.Num*1000)), set.Num/barPa)
	if err != nil {
		c.Missing(r, "relief-capacity", Plain, Always, "the stated capacity (rated) of "+reliefName(r)+": the table by size holds for DN15 to DN50 at 2.5 and 3 bar")
		return
	}
	add(s.Output, &FormulaReliefSize, Input{Name: "size", Text: size.Word}, Input{Name: "set", Num: set.Num, Dim: lang.Pressure, Unit: "bar"})
}

// reliefName names a safety valve in a sentence.
func reliefName(r *plant.Part) string {
	if r.Owner != nil && r.Owner.Kind == "unit" {
		return "the safety valve of " + r.Owner.Label()
	}
	return r.Label()
}

// dischargeSize computes the size that a discharge pipe must have for the
// largest valve on it; a shared pipe is one size over that.
func dischargeSize(c *Context, d *plant.Part) {
	var lack string
	largest, valves := 0, 0
	var seen plant.PartSet
	for _, ref := range d.Refs("from") {
		r := ref.Part
		if r.Kind == "unit" {
			r = r.Child("relief")
		}
		if r == nil || seen.Has(r) {
			continue
		}
		seen.Add(r)
		valves++
		if v := r.Get("size"); v.Known() {
			largest = max(largest, int(math.Round(v.Num*1000)))
		} else {
			lack = "the size of " + reliefName(r)
		}
	}
	length, elbows := d.Get("length"), d.Get("elbows")
	switch {
	case lack != "":
	case valves == 0:
		lack = "a safety valve that leads into the pipe"
	case !length.Known():
		lack = "the length of " + d.Label()
	case !elbows.Known() && !elbows.Absent():
		lack = "the elbows of " + d.Label() + " (elbows, or none)"
	}
	if lack != "" {
		c.Missing(d, "needed-size", Plain, Always, lack)
		return
	}
	if c.P.US() {
		c.Add(Quantity{Part: d, Name: "needed-size", Num: float64(largest) / 1000, Dim: lang.Length, Unit: "in", Formula: &FormulaDischargeUS})
		return
	}
	n, err := valve.BlowOff(largest, length.Num, int(math.Round(elbows.Num)))
	if err != nil {
		c.Missing(d, "needed-size", Plain, Always, "the back pressure of "+d.Label()+" proved by other means: "+err.Error())
		return
	}
	if valves > 1 {
		if m, err := valve.CommonDischarge(largest); err == nil {
			n = max(n, m)
		}
	}
	c.Add(Quantity{
		Part: d, Name: "needed-size", Num: float64(n) / 1000, Dim: lang.Length, Unit: "mm", Formula: &FormulaDischarge,
		Inputs: c.Inputs(Input{Name: "largest inlet", Num: float64(largest) / 1000, Dim: lang.Length, Unit: "mm"}, Input{Name: "length", Num: length.Num, Dim: lang.Length, Unit: "m"}, Input{Name: "bends", Num: elbows.Num, Dim: lang.Count}),
	})
}

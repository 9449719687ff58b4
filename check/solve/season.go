package solve

import (
	"math"
	"strconv"

	"example.org/tundish/check/calc/season"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// Formulas of the year.
var (
	FormulaYearHeat  = Formula{Text: "Q = area under the load curve, straight from its start at the design load through its points to its base", Source: season.SourceCurve}
	FormulaBelow     = Formula{Text: "time in which the load is below the least heat of one unit, from the curve", Source: season.SourceCurve}
	FormulaRunning   = Formula{Text: "time with n units; n+1 run from min(release share x M(n+1), bring-on share x M(n)) with most units, from bring-on share x M(n) with fewest; M(n) the sum of n outputs; without a release from their least heats, without a bring-on from M(n)", Source: season.SourceSequence}
	FormulaMeanUnits = Formula{Text: "mean = sum of n x time with n units / time of the curve", Source: season.SourceSequence}
	FormulaAtLeast   = Formula{Text: "share of the curve in which the load is below the least heats of the units that run", Source: season.SourceSequence}
	FormulaYearStart = Formula{Text: "integral of n L (P - L)/(P C dT) dt over the time at the least rate, P the least heats of the n units that run, C = water x 4.1 MJ/(m3.K)", Source: season.SourceCycling}
	FormulaReturn    = Formula{Text: "x where (1-s) [t_room + (t_mean - t_room) x^(1/e) - (t_flow - t_return) x/2] + s t_return is the dew point; x the share of the weather's load, s the share of the circuits kept at one temperature", Source: season.SourceEmitters}
	FormulaCondenses = Formula{Text: "share of the curve below base + x (load - base), x the share of the weather's load at which the return is at the dew point", Source: season.SourceEmitters}
)

// What the return by the weather stands on where nothing is stated.
const (
	roomTemperature  = 20.0 // degC; common practice
	radiatorExponent = 1.3  // EN 442, from memory
)

// LoadCurve is the load-duration curve of the basis, from the design load in W;
// missing says what it needs.
func LoadCurve(p *plant.Plant, load float64) (curve season.Curve, missing string) {
	stated := p.Block("basis").Child("load-curve")
	hours, base := stated.Get("hours"), stated.Get("base")
	switch {
	case stated == nil:
		return nil, "the load over the hours of a year (load-curve)"
	case !hours.Known():
		return nil, "the hours of the load-curve"
	case !base.Known():
		return nil, "the share of the load that never goes away (base of the load-curve)"
	}
	points := stated.Children("point")
	curve = make(season.Curve, 1, len(points)+2)
	curve[0] = season.Point{Load: load}
	for _, pt := range points {
		t, share := pt.Get("time"), pt.Get("share")
		if !t.Known() || !share.Known() {
			return nil, "time and share of every point of the load-curve"
		}
		curve = append(curve, season.Point{Time: t.Num, Load: load * share.Num})
	}
	curve = append(curve, season.Point{Time: hours.Num, Load: load * base.Num})
	if err := curve.Check(); err != nil {
		return nil, "a load-curve that can be followed: " + err.Error()
	}
	return curve, ""
}

// solveSeason follows the cascade over the load curve of the year.
func solveSeason(c *Context) {
	basis, group := c.P.Block("basis"), c.P.UnitGroup()
	if group == nil {
		return
	}
	load := c.Get(basis, "load", Always)
	lack := ""
	if !load.Known() {
		if lack = "a load in the basis"; load != nil {
			lack = load.Missing
		}
	}
	var curve season.Curve
	if lack == "" {
		curve, lack = LoadCurve(c.P, load.Num)
	}
	if lack != "" {
		c.Missing(group, "year-heat", Plain, Always, lack)
		return
	}
	s := &seasonSide{c: c, group: group, curve: curve, load: load.Num, base: curve[len(curve)-1].Load}
	s.curveInputs = c.Inputs(
		Input{Name: "load", Num: s.load, Dim: lang.Power, Unit: powerUnit(c.P)}, Input{Name: "base", Num: s.base, Dim: lang.Power, Unit: powerUnit(c.P)},
		Input{Name: "hours", Num: curve.Span(), Dim: lang.Time, Unit: "h"}, Input{Name: "points between", Num: float64(len(curve) - 2), Dim: lang.Count},
	)
	_, heat := curve.Between(0, math.Inf(1))
	s.heat = heat
	unit := "MWh"
	if c.P.US() {
		unit = "therm"
	}
	s.add("year-heat", Plain, heat, lang.Energy, unit, &FormulaYearHeat, s.curveInputs)
	s.below()
	s.running()
	s.condensing()
}

// seasonSide is what the values of the year share.
type seasonSide struct {
	c           *Context
	group       *plant.Part
	curve       season.Curve
	load, base  float64 // W, the ends of the curve
	heat        float64 // J of the year
	curveInputs []Input
}

func (s *seasonSide) add(name string, stat Stat, num float64, d lang.Dimension, unit string, f *Formula, in []Input) {
	s.c.Add(Quantity{Part: s.group, Name: name, Stat: stat, Num: num, Dim: d, Unit: unit, Formula: f, Inputs: in})
}

func (s *seasonSide) with(in ...Input) []Input {
	return s.c.Inputs(append(append(make([]Input, 0, len(s.curveInputs)+len(in)), s.curveInputs...), in...)...)
}

// below is how long the load lies below the least that the plant can give.
func (s *seasonSide) below() {
	least := s.c.Get(s.group, "least-heat", Always)
	if !least.Known() {
		lack := "the least input of every unit with its basis"
		if least != nil {
			lack = least.Missing
		}
		s.c.Missing(s.group, "hours-below-least", Plain, Always, lack)
		return
	}
	p := least.Num
	t, _ := s.curve.Between(0, p)
	s.add("hours-below-least", Plain, t, lang.Time, "h", &FormulaBelow, s.with(Input{Name: "least heat", Num: p, Dim: lang.Power, Unit: powerUnit(s.c.P)}))
}

// sequence reads how units are brought on; lack says what the text must state.
func (s *seasonSide) sequence() (q season.Sequence, lack string) {
	controls := s.c.P.Block("controls")
	strategy := controls.Child("strategy").Get("strategy")
	units := s.c.P.Units()
	if len(units) > 1 {
		if !strategy.Known() {
			return q, "how many units share a load (strategy in controls)"
		}
		q.MostUnits = strategy.Is("most-units")
	}
	if v := controls.Child("bring-on").Get("at"); v.Known() {
		q.BringOn = v.Num
	}
	if v := controls.Child("release").Get("at"); v.Known() {
		q.Release = v.Num
	}
	q.Units = make([]season.Unit, 0, len(units))
	for _, u := range units {
		out, _ := s.c.output(u)
		full, ok := NetInput(s.c.P, u.Child("input"))
		low, okLow := NetInput(s.c.P, u.Child("input-low"))
		if !out.Known() || !ok || !okLow || full <= 0 {
			return q, "output, input and least input of " + u.Label()
		}
		n := season.Unit{Least: low * out.Num / full, Most: out.Num}
		if len(q.Units) > 0 && n != q.Units[0] && !controls.Child("lead").Get("lead").Is("fixed") {
			return q, "units of one size, or a lead that does not change (lead fixed)"
		}
		q.Units = append(q.Units, n)
	}
	if err := q.Check(); err != nil {
		return q, err.Error()
	}
	return q, ""
}

// running stores how many units run for how long, the time at the least rate and
// the starts.
func (s *seasonSide) running() {
	q, lack := s.sequence()
	if lack != "" {
		for _, name := range [...]string{"hours-at-least", "heat-at-least", "year-starts"} {
			s.c.Missing(s.group, name, Plain, Always, lack)
		}
		s.c.Missing(s.group, "running-units", Mean, Always, lack)
		return
	}
	volume, swing, lack := cycleStore(s.c.P)
	y := q.Over(s.curve, volume*heatOfWater*swing)
	word := "fewest-units"
	if q.MostUnits {
		word = "most-units"
	}
	in := s.with(
		Input{Name: "strategy", Text: word}, Input{Name: "bring-on", Num: q.BringOn, Dim: lang.Ratio, Unit: "%"}, Input{Name: "release", Num: q.Release, Dim: lang.Ratio, Unit: "%"},
		Input{Name: "least of the first", Num: q.Units[0].Least, Dim: lang.Power, Unit: powerUnit(s.c.P)}, Input{Name: "most of the first", Num: q.Units[0].Most, Dim: lang.Power, Unit: powerUnit(s.c.P)},
	)
	for n, t := range y.Hours {
		s.add(HoursWith(n+1), Plain, t, lang.Time, "h", &FormulaRunning, in)
	}
	s.add("running-units", Mean, y.Running(), lang.Count, "unit", &FormulaMeanUnits, in)
	s.add("hours-at-least", Plain, y.LeastTime/y.Time, lang.Ratio, "%", &FormulaAtLeast, in)
	if y.Heat > 0 {
		s.add("heat-at-least", Plain, y.LeastHeat/y.Heat, lang.Ratio, "%", &FormulaAtLeast, in)
	}
	if lack != "" {
		s.c.Missing(s.group, "year-starts", Plain, Always, lack)
		return
	}
	s.add("year-starts", Plain, y.Starts, lang.Count, "off", &FormulaYearStart, s.with(Input{Name: "water", Num: volume, Dim: lang.Volume, Unit: "l"}, Input{Name: "dT", Num: swing, Dim: lang.TempDiff}, Input{Name: "P of one", Num: q.Units[0].Least, Dim: lang.Power, Unit: powerUnit(s.c.P)}))
}

var hoursWith = [...]string{"hours-with-1", "hours-with-2", "hours-with-3", "hours-with-4", "hours-with-5", "hours-with-6", "hours-with-7", "hours-with-8"}

// HoursWith is the name of the value that tells how long n units run, n from 1.
func HoursWith(n int) string {
	if n <= len(hoursWith) {
		return hoursWith[n-1]
	}
	return "hours-with-" + strconv.Itoa(n)
}

// condensing stores the share of the year in which the return that follows the
// weather is below the dew point of the products.
func (s *seasonSide) condensing() {
	lack := func(what string) {
		s.c.Missing(s.group, "hours-condensing", Plain, Always, what)
		s.c.Missing(s.group, "heat-condensing", Plain, Always, what)
	}
	primary := s.c.P.Block("basis").Get("primary")
	dew, missing := s.dewPoint()
	kept, keptLack := keptShare(s.c.P)
	switch {
	case !s.c.P.Block("controls").Child("set-point").Has("weather-led"):
		lack("a flow temperature that follows the weather (set-point weather-led)")
		return
	case !primary.Known():
		lack("the flow and return temperature in the basis (primary)")
		return
	case missing != "":
		lack(missing)
		return
	case keptLack != "":
		lack(keptLack)
		return
	}
	w := season.Weather{Flow: primary.Num, Return: primary.Num2, Room: roomTemperature, Exponent: emitterExponent(s.c.P)}
	if err := w.Check(); err != nil {
		lack("temperatures that the weather can lead: " + err.Error())
		return
	}
	x := 0.0
	switch {
	case kept < 1:
		x = w.Share((dew - kept*primary.Num2) / (1 - kept))
	case primary.Num2 < dew:
		x = 1
	}
	below := s.base + x*(s.load-s.base)
	if x == 1 {
		below = math.Inf(1) // at the design load as well
	}
	t, q := s.curve.Between(0, below)
	in := s.with(
		Input{Name: "dew point", Num: dew, Dim: lang.Temperature}, Input{Name: "t_flow", Num: primary.Num, Dim: lang.Temperature}, Input{Name: "t_return", Num: primary.Num2, Dim: lang.Temperature},
		Input{Name: "t_room", Num: w.Room, Dim: lang.Temperature}, Input{Name: "e", Num: w.Exponent, Dim: lang.Ratio}, Input{Name: "s", Num: kept, Dim: lang.Ratio, Unit: "%"},
	)
	s.add("condensing-share", Plain, x, lang.Ratio, "%", &FormulaReturn, in)
	in = s.with(Input{Name: "x", Num: x, Dim: lang.Ratio, Unit: "%"})
	s.add("hours-condensing", Plain, t/s.curve.Span(), lang.Ratio, "%", &FormulaCondenses, in)
	if s.heat > 0 {
		s.add("heat-condensing", Plain, q/s.heat, lang.Ratio, "%", &FormulaCondenses, in)
	}
}

// dewPoint is the lowest of the plant's flues.
func (s *seasonSide) dewPoint() (dew float64, missing string) {
	dew = math.Inf(1)
	for _, fl := range s.c.P.ByKind("flue") {
		part := fl.Child("flue-header")
		if part == nil {
			part = fl
		}
		q := s.c.Get(part, "dew-point", Always)
		if !q.Known() {
			if q == nil {
				return 0, "the dew point of the products"
			}
			return 0, q.Missing
		}
		dew = min(dew, q.Num)
	}
	if math.IsInf(dew, 1) {
		return 0, "a flue, for the dew point of the products"
	}
	return dew, ""
}

// keptShare is the share of the circuits' flow that is kept at one temperature,
// whatever the weather.
func keptShare(p *plant.Plant) (share float64, missing string) {
	kept, sum := 0.0, 0.0
	for _, circuit := range p.Block("secondary").Children("circuit") {
		v := circuit.Get("flow")
		if !v.Known() {
			return 0, "the flow of " + circuit.Label()
		}
		sum += v.Num
		if circuit.Get("control").Is("constant") && !circuit.Has("weather-led") {
			kept += v.Num
		}
	}
	if sum <= 0 {
		return 0, ""
	}
	return kept / sum, ""
}

// emitterExponent is that of the stated emitters; of radiators where they differ
// or none are stated.
func emitterExponent(p *plant.Plant) float64 {
	exponent := 0.0
	for _, e := range p.Block("secondary").Children("emitters") {
		n := radiatorExponent
		switch kind := e.Get("kind"); {
		case kind.Is("floor-heating"):
			n = 1.1
		case kind.Is("fan-coils"):
			n = 1
		}
		if exponent != 0 && n != exponent {
			return radiatorExponent
		}
		exponent = n
	}
	if exponent == 0 {
		return radiatorExponent
	}
	return exponent
}

package solve

import (
	"math"
	"strings"

	"example.org/tundish/check/calc/gas"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// Formulas of the gas values.
var (
	FormulaGasRate     = Formula{Text: "Q = P / CV, both gross or both net, at 15 degC and 1013.25 mbar", Source: gas.SourceRate}
	FormulaRateSum     = Formula{Text: "sum of the gas rates of the units behind it", Source: gas.SourceRate}
	FormulaRateLeast   = Formula{Text: "least of the gas rates of the units at minimum fire", Source: gas.SourceRate}
	FormulaGasSection  = Formula{Text: "p1^2 - p2^2 = (R T/M) (m/A)^2 [f L/D + K + 2 ln(p1/p2)], L with the equivalent length of the fittings", Source: gas.SourceIsothermal}
	FormulaGasVelocity = Formula{Text: "v = m / (rho A) at the inlet of the section", Source: gas.SourceIsothermal}
	FormulaGasPressure = Formula{Text: "p = supply - losses of every section on the way + g H (rho_air - rho_gas)", Source: gas.SourceIsothermal}
	FormulaGasRun      = Formula{Text: "loss = supply - pressure at the worst unit, everything firing, height gain counted", Source: gas.SourceIsothermal}
	FormulaGasVolume   = Formula{Text: "IV = 1.1 x volume of the pipes + volume of the meter", Source: gas.SourceInstallationVolume}
	FormulaLargest     = Formula{Text: "nominal size of the largest pipe", Source: gas.SourceInstallationVolume}
	FormulaPurge       = Formula{Text: "PV = 1.5 x IV + 5 x cyclic volume of the meter", Source: gas.SourcePurge}
	FormulaPurgeRate   = Formula{Text: "Q = 0.6 m/s x pi/4 D^2 of the largest pipe", Source: gas.SourcePurgeRate}
	FormulaTestTimeUS  = Formula{Text: "half an hour by 500 ft3 of IV or a part of it; 10 min under 10 ft3, 24 h at most", Source: gas.SourceUSTest}
	FormulaTestTime    = Formula{Text: "TTD = GRM x IV x F1, F1 = 67 with air, 42 with natural gas; whole minutes, at least 2", Source: gas.SourceTightness}
)

// solveGas computes gas rates and the gas run.
func solveGas(c *Context) {
	basis := c.P.Block("basis")
	block := c.P.Block("gas-run")
	var probe gasTree
	probe.readFuel(basis)
	rates(c, &probe)
	if block == nil {
		return
	}
	t := newGasTree(c, block)
	t.flows(c)
	if t.missing == "" {
		t.pressures()
	}
	t.store(c, block)
	t.volume(c, block)
}

// gasUnit prints gas flows: in m3/h, or ft3/h in the US.
func gasUnit(p *plant.Plant) string {
	if p.US() {
		return "ft3/h"
	}
	return "m3/h"
}

// gasVolumeUnit prints volumes of gas: in m3, or ft3 in the US.
func gasVolumeUnit(p *plant.Plant) string {
	if p.US() {
		return "ft3"
	}
	return "m3"
}

// sizeUnit prints nominal sizes: in mm, or in in the US.
func sizeUnit(p *plant.Plant) string {
	if p.US() {
		return "in"
	}
	return "mm"
}

func gasPressureUnit(p *plant.Plant) string {
	if p.US() {
		return "inWC"
	}
	return "mbar"
}

// rates stores the gas rate of each unit at full and minimum fire.
func rates(c *Context, probe *gasTree) {
	unit := gasUnit(c.P)
	for _, u := range c.P.Units() {
		for _, k := range [...]struct {
			name string
			c    Case
		}{{"input", AllFull}, {"input-low", AllLow}} {
			heat, ok := NetInput(c.P, u.Child(k.name))
			switch {
			case probe.missing != "":
				c.Missing(u, "gas-rate", Plain, k.c, probe.missing)
				continue
			case !ok:
				c.Missing(u, "gas-rate", Plain, k.c, "the "+k.name+" of "+u.Label()+" with its basis")
				continue
			}
			q, err := rateOf(c.P, heat, &probe.fuel)
			if err != nil {
				c.Missing(u, "gas-rate", Plain, k.c, err.Error())
				continue
			}
			p := heat
			if probe.fuel.gross {
				p *= GrossToNet(c.P)
			}
			power, value := "P net", "CV net"
			if probe.fuel.gross {
				power, value = "P gross", "CV gross"
			}
			c.Add(Quantity{
				Part: u, Name: "gas-rate", Case: k.c, Num: q, Dim: lang.VolumeFlow, Unit: unit, Formula: &FormulaGasRate,
				Inputs: c.Inputs(Input{Name: power, Num: p, Dim: lang.Power}, Input{Name: value, Num: probe.fuel.value, Dim: lang.HeatValue}),
			})
		}
	}
}

func rateOf(p *plant.Plant, netHeat float64, f *gasFuel) (float64, error) {
	h, cv := gas.HeatInput{Watts: netHeat, Basis: gas.Net}, gas.CalorificValue{JPerM3: f.value, Basis: gas.Net}
	if f.gross {
		h.Watts *= GrossToNet(p)
		h.Basis, cv.Basis = gas.Gross, gas.Gross
	}
	return gas.Rate(h, cv)
}

// flows gives every section the rate of all units behind it, all at full fire.
func (t *gasTree) flows(c *Context) {
	if len(t.sections) == 0 {
		t.need("a pipe from the supply point")
		return
	}
	for i := range t.sections {
		u := t.sections[i].unit
		if u == nil {
			continue
		}
		q := c.Get(u, "gas-rate", AllFull)
		if !q.Known() {
			t.need("the gas rate of " + u.Label())
			return
		}
		for k := i; k >= 0; k = t.sections[k].parent {
			t.sections[k].flow += q.Num
		}
	}
}

// pressures follows the gas from the supply, section by section.
func (t *gasTree) pressures() {
	for i := range t.sections {
		s := &t.sections[i]
		s.inlet = t.source
		if s.parent >= 0 {
			s.inlet = t.sections[s.parent].outlet
		}
		s.outlet = s.inlet
		switch {
		case s.bore > 0:
			calc := gas.Section{
				RelativeDensity: t.fuel.density, Viscosity: t.fuel.viscosity, Bore: s.bore, Roughness: s.roughness,
				Length: s.length, Equivalent: s.equivalent, Inlet: s.inlet, Flow: s.flow,
			}
			d, err := calc.Drop()
			if err != nil {
				t.need("a gas flow that " + s.part.Label() + " can pass: " + err.Error())
				return
			}
			s.drop, s.velocity = d.Pressure+s.loss, d.Velocity
			gain, err := gas.HeightGain(t.fuel.density, s.inlet, s.rise)
			if err != nil {
				t.need(err.Error())
				return
			}
			s.outlet = s.inlet - s.drop + gain
		case s.meter > 0:
			l, err := gas.MeterLoss(s.flow, s.meter, s.loss)
			if err != nil {
				l = s.loss * (s.flow / s.meter) * (s.flow / s.meter) // over its rating: gas-meter-too-small speaks of it
			}
			s.drop = l
			s.outlet = s.inlet - l
		default:
			s.drop = s.loss
			s.outlet = s.inlet - s.loss
		}
	}
}

// store puts the values of the tree into the results.
func (t *gasTree) store(c *Context, block *plant.Part) {
	pu, fu := gasPressureUnit(c.P), gasUnit(c.P)
	group := c.P.UnitGroup()
	if t.missing != "" {
		for _, u := range c.P.Units() {
			c.Missing(u, "gas-pressure", Plain, AllFull, t.missing)
		}
		c.Missing(group, "gas-pressure", Least, AllFull, t.missing)
		c.Missing(block, "pressure-loss", Plain, AllFull, t.missing)
		for _, kind := range [...]string{"pipe", "manifold", "drop"} {
			for _, p := range block.Children(kind) {
				c.Missing(p, "velocity", Plain, AllFull, t.missing)
				c.Missing(p, "pressure-loss", Plain, AllFull, t.missing)
			}
		}
		noRates(c, block, t.missing)
		return
	}
	least, worst := math.Inf(1), (*plant.Part)(nil)
	for i := range t.sections {
		s := &t.sections[i]
		t.storeSection(c, i, pu, fu)
		if s.unit == nil {
			continue
		}
		lost := 0.0
		for k := i; k >= 0; k = t.sections[k].parent {
			lost += t.sections[k].drop
		}
		in := c.Inputs(Input{Name: "supply", Num: t.source, Dim: lang.Pressure, Unit: pu}, Input{Name: "losses", Num: lost, Dim: lang.Pressure, Unit: pu}, Input{Name: "height gain", Num: s.outlet - t.source + lost, Dim: lang.Pressure, Unit: pu}, Input{Name: "Q", Num: s.flow, Dim: lang.VolumeFlow, Unit: fu})
		c.Add(Quantity{Part: s.unit, Name: "gas-pressure", Case: AllFull, Num: s.outlet, Dim: lang.Pressure, Unit: pu, Formula: &FormulaGasPressure, Inputs: in})
		if s.outlet < least {
			least, worst = s.outlet, s.unit
		}
	}
	if worst == nil {
		c.Missing(block, "pressure-loss", Plain, AllFull, "a drop to a unit")
		noRates(c, block, "a drop to a unit")
		return
	}
	at := Input{Name: "worst unit", Text: worst.Label()}
	c.Add(Quantity{Part: group, Name: "gas-pressure", Stat: Least, Case: AllFull, Num: least, Dim: lang.Pressure, Unit: pu, Formula: &FormulaGasPressure, Inputs: c.Inputs(at)})
	c.Add(Quantity{Part: block, Name: "pressure-loss", Case: AllFull, Num: t.source - least, Dim: lang.Pressure, Unit: pu, Formula: &FormulaGasRun, Inputs: c.Inputs(at, Input{Name: "supply", Num: t.source, Dim: lang.Pressure, Unit: pu})})
	total := 0.0
	for i := range t.sections {
		if t.sections[i].parent < 0 {
			total += t.sections[i].flow
		}
	}
	// Meter and regulators pass the gas of all units at once, at light-up that of
	// all at their least, and that of one unit at its least.
	low, sum := math.Inf(1), 0.0
	for _, u := range c.P.Units() {
		q := c.Get(u, "gas-rate", AllLow)
		if !q.Known() {
			low = math.NaN()
			break
		}
		low, sum = min(low, q.Num), sum+q.Num
	}
	served := c.Inputs(Input{Name: "units", Num: float64(len(c.P.Units())), Dim: lang.Count})
	for _, m := range append(block.Children("meter"), block.Children("regulator")...) {
		c.Add(Quantity{Part: m, Name: "rate", Case: AllFull, Num: total, Dim: lang.VolumeFlow, Unit: fu, Formula: &FormulaRateSum, Inputs: served})
		if low == low && !math.IsInf(low, 1) {
			c.Add(Quantity{Part: m, Name: "rate", Case: AllLow, Num: sum, Dim: lang.VolumeFlow, Unit: fu, Formula: &FormulaRateSum, Inputs: served})
			c.Add(Quantity{Part: m, Name: "rate", Case: OneAlone, Num: low, Dim: lang.VolumeFlow, Unit: fu, Formula: &FormulaRateLeast, Inputs: served})
		} else {
			c.Missing(m, "rate", Plain, OneAlone, "the least input of every unit with its basis")
		}
	}
}

// noRates says why it is open what meters and regulators pass; without units
// nothing asks for gas.
func noRates(c *Context, block *plant.Part, why string) {
	if len(c.P.Units()) == 0 {
		return
	}
	for _, m := range append(block.Children("meter"), block.Children("regulator")...) {
		c.Missing(m, "rate", Plain, AllFull, why)
		c.Missing(m, "rate", Plain, OneAlone, why)
	}
}

// storeSection stores rate, velocity and loss of a pipe; a manifold gets the
// sum of its segments once.
func (t *gasTree) storeSection(c *Context, i int, pu, fu string) {
	s := &t.sections[i]
	drop, velocity, flow, length, equivalent := s.drop, s.velocity, s.flow, s.length, s.equivalent
	if s.part.Kind == "manifold" {
		if c.Get(s.part, "pressure-loss", AllFull) != nil {
			return
		}
		drop, length, equivalent = 0, 0, 0
		for k := range t.sections {
			if m := &t.sections[k]; m.part == s.part {
				drop, length, equivalent = drop+m.drop, length+m.length, equivalent+m.equivalent
				velocity, flow = max(velocity, m.velocity), max(flow, m.flow)
			}
		}
	}
	if s.bore == 0 {
		c.Add(Quantity{Part: s.part, Name: "pressure-loss", Case: AllFull, Num: drop, Dim: lang.Pressure, Unit: pu, Formula: &FormulaGasSection, Inputs: c.Inputs(Input{Name: "stated loss", Num: s.loss, Dim: lang.Pressure, Unit: pu})})
		return
	}
	in := c.Inputs(
		Input{Name: "Q", Num: flow, Dim: lang.VolumeFlow, Unit: fu}, Input{Name: "D", Num: s.bore, Dim: lang.Length, Unit: "mm"}, Input{Name: "L", Num: length, Dim: lang.Length}, Input{Name: "fittings", Num: equivalent, Dim: lang.Length, Unit: "m"},
		Input{Name: "p1", Num: s.inlet, Dim: lang.Pressure, Unit: pu}, Input{Name: "d", Num: t.fuel.density, Dim: lang.Ratio},
		Input{Name: "roughness", Num: s.roughness, Dim: lang.Length, Unit: "mm"}, Input{Name: "viscosity", Num: t.fuel.viscosity, Dim: lang.Viscosity},
	)
	c.Add(Quantity{Part: s.part, Name: "rate", Case: AllFull, Num: flow, Dim: lang.VolumeFlow, Unit: fu, Formula: &FormulaRateSum})
	c.Add(Quantity{Part: s.part, Name: "velocity", Case: AllFull, Num: velocity, Dim: lang.Velocity, Unit: "m/s", Formula: &FormulaGasVelocity, Inputs: in})
	c.Add(Quantity{Part: s.part, Name: "pressure-loss", Case: AllFull, Num: drop, Dim: lang.Pressure, Unit: pu, Formula: &FormulaGasSection, Inputs: in})
}

// volume stores installation volume, purge and test of the gas run.
func (t *gasTree) volume(c *Context, block *plant.Part) {
	lack := func(what string) {
		for _, name := range [...]string{"installation-volume", "purge-volume", "purge-rate", "test-time"} {
			c.Missing(block, name, Plain, Always, what)
		}
	}
	if t.missing != "" && (len(t.sections) == 0 || t.loose) {
		lack(t.missing)
		return
	}
	pipes, widest := 0.0, 0.0
	var largest *plant.Part
	size := 0.0
	for i := range t.sections {
		s := &t.sections[i]
		if s.bore == 0 && (s.part.Kind == "pipe" || s.part.Kind == "drop" || s.part.Kind == "manifold") {
			lack("size and length of " + s.part.Label())
			return
		}
		v, err := gas.PipeVolume(s.bore, s.length)
		if err == nil {
			pipes += v
		}
		widest = max(widest, s.bore)
		if v := s.part.Get("size"); s.bore > 0 && v.Known() && nominal(c.P, v) > size {
			size, largest = nominal(c.P, v), s.part
		}
	}
	if largest != nil {
		c.Add(Quantity{Part: block, Name: "pipe-size", Stat: Most, Num: size, Dim: lang.Length, Unit: sizeUnit(c.P), Formula: &FormulaLargest, Inputs: c.Inputs(Input{Name: "at", Text: largest.Label()})})
	}
	meter, cyclic := 0.0, 0.0
	for _, m := range block.Children("meter") {
		v := m.Get("volume")
		if !v.Known() {
			lack("the volume of " + m.Label())
			return
		}
		meter += v.Num
		if cy := m.Get("cyclic-volume"); cy.Known() {
			cyclic += cy.Num
		}
	}
	vu := gasVolumeUnit(c.P)
	iv, err := gas.InstallationVolume(pipes, meter)
	if err != nil {
		lack(err.Error())
		return
	}
	in := c.Inputs(Input{Name: "pipes", Num: pipes, Dim: lang.Volume, Unit: vu}, Input{Name: "meter", Num: meter, Dim: lang.Volume, Unit: vu})
	c.Add(Quantity{Part: block, Name: "installation-volume", Num: iv, Dim: lang.Volume, Unit: vu, Formula: &FormulaGasVolume, Inputs: in})
	if !c.P.US() { // there an instrument at the end of the purge decides, not a volume
		purge(c, block, iv, cyclic, widest)
	}
	t.testTime(c, block, iv)
}

// purge stores how much gas lets the air out, and how fast.
func purge(c *Context, block *plant.Part, iv, cyclic, widest float64) {
	if pv, err := gas.PurgeVolume(iv, cyclic); err == nil {
		c.Add(Quantity{Part: block, Name: "purge-volume", Num: pv, Dim: lang.Volume, Unit: "m3", Formula: &FormulaPurge, Inputs: c.Inputs(Input{Name: "IV", Num: iv, Dim: lang.Volume, Unit: "m3"}, Input{Name: "cyclic volume", Num: cyclic, Dim: lang.Volume, Unit: "m3"})})
	}
	if q, err := gas.PurgeRate(widest); err == nil {
		c.Add(Quantity{Part: block, Name: "purge-rate", Num: q, Dim: lang.VolumeFlow, Unit: "m3/h", Formula: &FormulaPurgeRate, Inputs: c.Inputs(Input{Name: "D", Num: widest, Dim: lang.Length, Unit: "mm"})})
	}
}

// testTime stores how long the tightness test must last with the stated gauge
// and medium, or with air and a water gauge.
func (t *gasTree) testTime(c *Context, block *plant.Part, iv float64) {
	if c.P.US() {
		if d, err := gas.USTestTime(iv); err == nil {
			c.Add(Quantity{Part: block, Name: "test-time", Num: d, Dim: lang.Time, Unit: "min", Formula: &FormulaTestTimeUS, Inputs: c.Inputs(Input{Name: "IV", Num: iv, Dim: lang.Volume, Unit: gasVolumeUnit(c.P)})})
		}
		return
	}
	movement, medium := gas.MovementWaterGauge, gas.TestAir
	if s := c.P.Block("tests").Child("tightness"); s != nil {
		if s.Get("gauge").Is("electronic") {
			movement = gas.MovementElectronic
		}
		if s.Get("medium").Is("natural-gas") {
			medium = gas.TestNaturalGas
		}
	}
	d, err := gas.TightnessTime(movement, iv, medium)
	if err != nil {
		c.Missing(block, "test-time", Plain, Always, err.Error())
		return
	}
	c.Add(Quantity{
		Part: block, Name: "test-time", Num: d, Dim: lang.Time, Unit: "min", Formula: &FormulaTestTime,
		Inputs: c.Inputs(Input{Name: "GRM", Num: movement, Dim: lang.Pressure, Unit: "mbar"}, Input{Name: "IV", Num: iv, Dim: lang.Volume, Unit: gasVolumeUnit(c.P)}),
	})
}

// nominal is a size in m as standards count it: 6 in is DN150. In the US a size in
// inches stays one.
func nominal(p *plant.Plant, v plant.Value) float64 {
	if !p.US() && strings.HasSuffix(v.Word, "in") {
		return math.Round(v.Num/0.0254*4) / 4 * 0.025
	}
	return v.Num
}

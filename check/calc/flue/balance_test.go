package flue_test

import (
	"errors"
	"math"
	"testing"

	"example.org/tundish/check/calc/flue"
)

// header builds an invented common flue: units with a connecting pipe each
// into a header that runs past them to a riser. Duct 2i is the connecting pipe
// of unit i, 2i+1 the header from its entry to the next, 2n the riser.
func header(units int, bore float64) flue.Common {
	ducts := make([]flue.Duct, 0, 2*units+1)
	for i := range units {
		next := 2*i + 3
		if i == units-1 {
			next = 2 * units
		}
		ducts = append(ducts,
			flue.Duct{Next: 2*i + 1, Bore: 0.1, Length: 1, Rise: 0.8, Roughness: 0.001, Loss: 1.6, Transmittance: 2, Ambient: 25},
			flue.Duct{Next: next, Bore: bore, Length: 1.2, Rise: 0.0629, Roughness: 0.001, Loss: 0.2, Transmittance: 2, Ambient: 25})
	}
	ducts = append(ducts, flue.Duct{Next: -1, Bore: bore, Length: 10, Rise: 10, Roughness: 0.001, Loss: 0.9, Transmittance: 2, Ambient: 5})
	return flue.Common{
		Ducts: ducts, SafetyFactor: 1.2, Wind: 25, Pressure: 101325, Outside: 5,
		GasConstant: 298, HeatCapacity: 1070,
	}
}

func allFull(units int) []flue.Firing {
	f := make([]flue.Firing, units)
	for i := range f {
		f[i] = flue.Firing{Duct: 2 * i, MassFlow: 0.0457, Temperature: 70, Push: 200}
	}
	return f
}

func TestBalanceProperties(t *testing.T) {
	c := header(4, 0.25)
	firings, states := allFull(4), make([]flue.State, 9)
	no(t, c.Balance(firings, states))
	near(t, "outlet at the wind", states[8].End, 25, 0)
	near(t, "all the gas leaves", states[8].MassFlow, 4*0.0457, 1e-12)
	for i := range states {
		s := &states[i]
		near(t, "pressures add up", s.Start-s.End, s.Friction-s.Buoyancy, 1e-9)
		if s.Out >= s.Mean || s.Mean >= s.In {
			t.Errorf("duct %d does not cool: %g %g %g", i, s.In, s.Mean, s.Out)
		}
	}
	for i := range 3 {
		if firings[i].Margin(states) >= firings[i+1].Margin(states) {
			t.Errorf("unit %d is no worse off than the next one towards the riser", i)
		}
	}
	// The heat that the walls lose is the heat that the gas loses.
	lost := 0.0
	for i := range states {
		d := c.Ducts[i]
		lost += d.Transmittance * math.Pi * d.Bore * d.Length * (states[i].Mean - d.Ambient)
	}
	near(t, "heat", lost, states[8].MassFlow*c.HeatCapacity*(70-states[8].Out), 1e-9)
	// The safety factor touches friction only.
	plain := header(4, 0.25)
	plain.SafetyFactor = 1
	other := make([]flue.State, 9)
	no(t, plain.Balance(firings, other))
	for i := range states {
		near(t, "buoyancy", states[i].Buoyancy, other[i].Buoyancy, 0)
		near(t, "friction", states[i].Friction, 1.2*other[i].Friction, 1e-12)
	}
	// Wind is added to every pressure.
	calm := header(4, 0.25)
	calm.Wind = 0
	no(t, calm.Balance(firings, other))
	for i := range states {
		near(t, "wind", states[i].Start-other[i].Start, 25, 1e-9)
	}
	// A wider flue lowers the pressure at every unit.
	last := math.Inf(1)
	for bore := 0.18; bore < 0.32; bore += 0.01 {
		wide := header(4, bore)
		no(t, wide.Balance(firings, states))
		p, at := flue.Highest(states)
		if p >= last {
			t.Errorf("bore %g: %g Pa after %g", bore, p, last)
		}
		if at != 0 {
			t.Errorf("bore %g: the highest pressure stands in duct %d", bore, at)
		}
		last = p
	}
}

func TestFiringCases(t *testing.T) {
	c := header(4, 0.25)
	states := make([]flue.State, 9)
	firings := allFull(4)
	no(t, c.Balance(firings, states))
	full := states[0].Start
	// One unit stopped: its damper holds the pressure of the header, and the
	// others push against less.
	firings[0].MassFlow = 0
	no(t, c.Balance(firings, states))
	if back := firings[0].Back(states); back <= 0 || back >= full {
		t.Errorf("behind the shut damper stand %g Pa, at full fire %g", back, full)
	}
	near(t, "no flow in its pipe", states[0].MassFlow, 0, 0)
	near(t, "its pipe is as warm as the room", states[0].Mean, 25, 0)
	near(t, "no friction in its pipe", states[0].Friction, 0, 0)
	near(t, "the riser carries three", states[8].MassFlow, 3*0.0457, 1e-12)
	// One alone at its lowest rate: the flue draws.
	alone := []flue.Firing{{Duct: 0, MassFlow: 0.0457 / 5, Temperature: 45, Push: 20}}
	calm := c
	calm.Wind = 0
	no(t, calm.Balance(alone, states))
	if states[0].Start >= 0 {
		t.Errorf("one alone at low fire: %g Pa", states[0].Start)
	}
	if out := states[8].Out; out >= 45 || out <= 5 {
		t.Errorf("outlet %g degC", out)
	}
	// Streams mix by mass.
	mixed := []flue.Firing{{Duct: 0, MassFlow: 0.01, Temperature: 40}, {Duct: 2, MassFlow: 0.03, Temperature: 80}}
	tight := header(2, 0.2)
	for i := range tight.Ducts {
		tight.Ducts[i].Transmittance = 0
	}
	no(t, tight.Balance(mixed, states))
	near(t, "mixed", states[4].Out, 70, 1e-12)
	if err := c.Balance([]flue.Firing{{Duct: 0}}, states); !errors.Is(err, flue.ErrNoFire) {
		t.Error(err)
	}
}

// TestTwoArms balances a riser between two arms of a header, which are alike:
// both must come out the same.
func TestTwoArms(t *testing.T) {
	arm := flue.Duct{Next: 2, Bore: 0.15, Length: 3, Rise: 0.2, Roughness: 0.001, Loss: 1, Ambient: 20}
	c := flue.Common{
		Ducts:        []flue.Duct{arm, arm, {Next: -1, Bore: 0.2, Length: 8, Rise: 8, Roughness: 0.001, Loss: 1, Ambient: 10}},
		SafetyFactor: 1.2, Pressure: 101325, Outside: 10, GasConstant: 298, HeatCapacity: 1070,
	}
	var states [3]flue.State
	no(t, c.Balance([]flue.Firing{{Duct: 0, MassFlow: 0.04, Temperature: 60}, {Duct: 1, MassFlow: 0.04, Temperature: 60}}, states[:]))
	if states[0] != states[1] {
		t.Errorf("the arms differ: %+v %+v", states[0], states[1])
	}
	// Speeding up into the riser is charged with the safety factor.
	gain := states[2].Dynamic - states[0].Dynamic
	near(t, "acceleration", states[0].End-states[2].Start, 1.2*gain, 1e-9)
}

func TestBalanceEdges(t *testing.T) {
	states := make([]flue.State, 9)
	for name, mend := range map[string]func(*flue.Common){
		"backwards":  func(c *flue.Common) { c.Ducts[3].Next = 1 },
		"two ends":   func(c *flue.Common) { c.Ducts[3].Next = -1 },
		"no end":     func(c *flue.Common) { c.Ducts[8].Next = 0 },
		"beyond":     func(c *flue.Common) { c.Ducts[3].Next = 9 },
		"no bore":    func(c *flue.Common) { c.Ducts[3].Bore = 0 },
		"steep":      func(c *flue.Common) { c.Ducts[3].Rise = 2 },
		"no number":  func(c *flue.Common) { c.Ducts[3].Loss = math.NaN() },
		"no air":     func(c *flue.Common) { c.Pressure = 0 },
		"safe":       func(c *flue.Common) { c.SafetyFactor = 0.9 },
		"wind":       func(c *flue.Common) { c.Wind = math.Inf(1) },
		"gas":        func(c *flue.Common) { c.GasConstant = 0 },
		"heat":       func(c *flue.Common) { c.HeatCapacity = 0 },
		"no ducts":   func(c *flue.Common) { c.Ducts = nil },
		"outside":    func(c *flue.Common) { c.Outside = 100 },
		"wall":       func(c *flue.Common) { c.Ducts[0].Transmittance = -1 },
		"hot around": func(c *flue.Common) { c.Ducts[0].Ambient = 100 },
	} {
		c := header(4, 0.25)
		mend(&c)
		if err := c.Balance(allFull(4), states); err == nil {
			t.Errorf("%s: passed", name)
		}
	}
	c := header(4, 0.25)
	for name, f := range map[string]flue.Firing{
		"nowhere":  {Duct: 9, MassFlow: 1, Temperature: 50},
		"negative": {Duct: 0, MassFlow: -1, Temperature: 50},
		"too hot":  {Duct: 0, MassFlow: 1, Temperature: 700},
	} {
		if err := c.Balance([]flue.Firing{f}, states); err == nil {
			t.Errorf("%s: passed", name)
		}
	}
	if err := c.Balance(allFull(4), states[:8]); !errors.Is(err, flue.ErrDucts) {
		t.Errorf("too few states: %v", err)
	}
}

func TestCooled(t *testing.T) {
	out, mean, err := flue.Cooled(70, 20, 0)
	no(t, err)
	near(t, "no loss", out, 70, 0)
	near(t, "no loss", mean, 70, 0)
	// Two halves in series are the whole.
	whole, mean, err := flue.Cooled(70, 20, 0.6)
	no(t, err)
	first, mean1, err := flue.Cooled(70, 20, 0.3)
	no(t, err)
	second, mean2, err := flue.Cooled(first, 20, 0.3)
	no(t, err)
	near(t, "out", second, whole, 1e-12)
	near(t, "mean", (mean1+mean2)/2, mean, 1e-12)
	near(t, "by hand", whole, 20+50*math.Exp(-0.6), 1e-12)
	_, tiny, err := flue.Cooled(70, 20, 1e-9)
	no(t, err)
	near(t, "small K", tiny, 70, 1e-8)
	u, err := flue.Transmittance(10, 0, 8, 1)
	no(t, err)
	near(t, "films in series", u, 1/(0.1+0.125), 1e-12)
	better, err := flue.Transmittance(10, 0.5, 8, 1.3)
	no(t, err)
	if better >= u {
		t.Error("insulation does not help")
	}
}

func TestFan(t *testing.T) {
	points := []flue.FanPoint{{0.01, 40}, {0.03, 120}, {0.05, 200}}
	for mass, want := range map[float64]float64{0.01: 40, 0.02: 80, 0.03: 120, 0.05: 200} {
		p, err := flue.FanPressure(points, mass)
		no(t, err)
		near(t, "fan", p, want, 1e-12)
	}
	for _, mass := range []float64{0.009, 0.051, math.NaN()} {
		if _, err := flue.FanPressure(points, mass); err == nil {
			t.Errorf("%g passed", mass)
		}
	}
	p, err := flue.FanPressure(points[:1], 0.01)
	no(t, err)
	near(t, "one point", p, 40, 0)
	if _, err := flue.FanPressure([]flue.FanPoint{{2, 1}, {1, 1}}, 1); !errors.Is(err, flue.ErrFan) {
		t.Error(err)
	}
}

func TestNoAllocation(t *testing.T) {
	c, firings, states := header(8, 0.3), allFull(8), make([]flue.State, 17)
	if n := testing.AllocsPerRun(100, func() {
		_ = c.Balance(firings, states)
		_, _ = flue.TemperatureClass("T120")
		_, _ = flue.ClassNamed("P1")
	}); n != 0 {
		t.Errorf("%g allocations", n)
	}
}

func BenchmarkBalanceEight(b *testing.B) {
	c, firings, states := header(8, 0.3), allFull(8), make([]flue.State, 17)
	b.ReportAllocs()
	for b.Loop() {
		if err := c.Balance(firings, states); err != nil {
			b.Fatal(err)
		}
	}
}

package flue_test

import (
	"math"
	"testing"

	"example.org/tundish/check/calc/flue"
)

func TestClasses(t *testing.T) {
	for _, c := range []struct {
		name     string
		pressure float64
		holds    bool
	}{
		{"N1", 0, true},
		{"N1", -10, true},
		{"N1", 0.1, false}, // its 40 Pa are a test pressure
		{"N2", 15, false},
		{"P1", 200, true},
		{"P1", 200.1, false},
		{"P2", 150, true},
		{"M1", 1500, true},
		{"H1", 5000, true},
		{"H2", 5001, false},
		{"P1", math.NaN(), false},
	} {
		class, ok := flue.ClassNamed(c.name)
		if !ok || class.Holds(c.pressure) != c.holds {
			t.Errorf("%s at %g Pa: holds is not %v", c.name, c.pressure, c.holds)
		}
	}
	if _, ok := flue.ClassNamed("X1"); ok {
		t.Error("class X1")
	}
	for name, want := range map[string]float64{"T80": 80, "T120": 120, "T600": 600} {
		if got, ok := flue.TemperatureClass(name); !ok || got != want {
			t.Errorf("%s: %g %v", name, got, ok)
		}
	}
	for _, name := range []string{"T110", "120", "T", "TX", ""} {
		if _, ok := flue.TemperatureClass(name); ok {
			t.Errorf("%q is a class", name)
		}
	}
	for celsius, want := range map[float64]int{60: 80, 80: 80, 80.5: 100, 110: 120, 600: 600} {
		got, err := flue.TemperatureClassFor(celsius)
		no(t, err)
		if got != want {
			t.Errorf("%g degC: T%d", celsius, got)
		}
	}
}

func TestFall(t *testing.T) {
	for _, c := range []struct {
		fall  float64
		meets bool
	}{{52.4, true}, {52, true}, {51.5, true}, {51.4, false}, {43.7, false}, {0, false}, {-52, false}} {
		got, err := flue.FallMeets(c.fall, 3)
		no(t, err)
		if got != c.meets {
			t.Errorf("%g mm/m: %v", c.fall, got)
		}
	}
	for angle := 0.0; angle <= 45; angle += 0.5 {
		fall, err := flue.FallOf(angle)
		no(t, err)
		back, err := flue.AngleOf(fall)
		no(t, err)
		if math.Abs(back-angle) > 1e-12 {
			t.Errorf("%g deg comes back as %g", angle, back)
		}
	}
	// 1/4 in per ft is 20.8 mm/m and 1.19 degrees.
	angle, err := flue.AngleOf(1000.0 / 48)
	no(t, err)
	near(t, "quarter inch", angle, 1.19, 5e-3)
}

func TestTerminals(t *testing.T) {
	// End points of the figures: 600 mm at 70 kW and 2500 mm at 333 kW;
	// 1500 and 4000 mm; 300 and 1500 mm.
	for name, c := range map[string]struct {
		line      flue.Line
		low, high float64
	}{
		"room-sealed": {flue.OpeningRoomSealed, 0.600, 2.500},
		"open-flued":  {flue.OpeningOpenFlued, 1.500, 4.000},
		"roof":        {flue.AboveRoof, 0.300, 1.500},
	} {
		low, err := c.line.Distance(70e3)
		no(t, err)
		near(t, name, low, c.low, 2e-3)
		high, err := c.line.Distance(333e3)
		no(t, err)
		near(t, name, high, c.high, 1e-2)
		for _, out := range []float64{69.9e3, 333.1e3, 0, math.NaN()} {
			if _, err := c.line.Distance(out); err == nil {
				t.Errorf("%s at %g W passed", name, out)
			}
		}
	}
	small, err := flue.SmallTerminals(70e3)
	no(t, err)
	for _, c := range small {
		if c.Meters < 0.07 || c.Source.Work == "" {
			t.Errorf("%+v", c)
		}
	}
	if _, err := flue.SmallTerminals(71e3); err == nil {
		t.Error("the table of small terminals took 71 kW")
	}
}

func TestChimney(t *testing.T) {
	// By hand from the formula: 0.444 MW 0.84 m, 1 MW 1.36 m.
	for watts, want := range map[float64]float64{0.444e6: 0.84, 1e6: 1.36} {
		u, err := flue.UncorrectedHeight(watts)
		no(t, err)
		near(t, "U", u, want, 6e-3) // two digits printed
	}
	for _, out := range []float64{149e3, 31e6, math.NaN()} {
		if _, err := flue.UncorrectedHeight(out); err == nil {
			t.Errorf("%g W passed", out)
		}
	}
	c, err := flue.CorrectedHeight(1.36, 9)
	no(t, err)
	near(t, "beside a building", c, 9.816, 1e-12)
	c, err = flue.CorrectedHeight(5, 1)
	no(t, err)
	near(t, "above low buildings", c, 5, 0)
	if !flue.NeedsCouncil(366.4e3) || flue.NeedsCouncil(366.3e3) || !flue.NeedsCouncil(444e3) {
		t.Error("threshold of the council")
	}
	if flue.NeedsHealth(135e3) || !flue.NeedsHealth(136e3) {
		t.Error("threshold of Environmental Health")
	}
}

func TestBore(t *testing.T) {
	bore, err := flue.BoreFor(0.1865, 0.942, 6.30)
	no(t, err)
	near(t, "bore", bore, 0.200, 2e-3)
	for _, z := range flue.Zetas() {
		if z.Low > z.High || z.Use < z.High || z.Source.Work == "" {
			t.Errorf("%+v", z)
		}
	}
}

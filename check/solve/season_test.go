package solve

import (
	"math"
	"strings"
	"testing"

	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// read resolves a plant of a test's own text, without a catalogue.
func read(t *testing.T, text string) *plant.Plant {
	t.Helper()
	f := lang.Parse(lang.NewSource("test.plant", text), nil)
	lang.Bind(f, lang.Language())
	for _, p := range f.Problems {
		t.Fatalf("%s: %s", p.Rule, p.Message)
	}
	return plant.Resolve(f, nil)
}

const triangle = `language "1"
plant "Test plant, invented" revision R1 date 2026-01-19
basis {
  altitude 0 m
  gas natural 34.02 MJ/m3 net
  primary 70/50 degC
  load Heating 300 kW heating
  load-curve 6000 h base 0 %
}
units U1..U3 {
  output 100 kW at 70/50 degC
  input 100 kW net
  input-low 20 kW net
  flue-data {
    co2 9 % at full
  }
}
safety {
  content 180 l primary
}
flue Flue-A {
  connector C1..C3 polypropylene DN110 0.6 m from U1..U3 to Head-F
  header Head-F polypropylene DN250 2 m from C1..C3 to Riser
  riser Riser polypropylene DN250 8 m from Head-F to Term
  terminal Term roof 1.5 m above open-cone
}
controls {
  set-point 70 degC weather-led
  strategy fewest-units
  cycling swing 10 K
}
`

// A triangle by hand, see the test of calc/season: 900 MWh; 2000 h with each
// number of units; below 20 kW 400 h and 4 MWh; C dT = 0.18 m3 x 4.1 MJ/m3K x
// 10 K = 7.38 MJ = 2.05 kWh, so 400 h x 20 kW/(6 x 2.05 kWh) starts. At 9 % CO2
// the dew point is 54.6 degC, above the return of 50 degC at full load: it
// always condenses.
func TestYearOfATriangle(t *testing.T) {
	p := read(t, triangle)
	r := Run(p)
	get := func(name string, stat Stat) float64 {
		t.Helper()
		q := r.Group(p.UnitGroup(), name, stat, Always)
		if !q.Known() {
			t.Fatalf("%s is not known: %+v", name, q)
		}
		return q.Num
	}
	for _, c := range []struct {
		name string
		stat Stat
		want float64
	}{
		{"year-heat", Plain, 900e3 * 3.6e6},
		{"hours-with-1", Plain, 2000 * 3600},
		{"hours-with-2", Plain, 2000 * 3600},
		{"hours-with-3", Plain, 2000 * 3600},
		{"running-units", Mean, 2},
		{"hours-below-least", Plain, 400 * 3600},
		{"hours-at-least", Plain, 400. / 6000},
		{"heat-at-least", Plain, 4. / 900},
		{"year-starts", Plain, 400 * 20 / (6 * 2.05)},
		{"hours-condensing", Plain, 1},
		{"heat-condensing", Plain, 1},
	} {
		if got := get(c.name, c.stat); math.Abs(got/c.want-1) > 1e-9 {
			t.Errorf("%s: %g, want %g", c.name, got, c.want)
		}
	}
	// Through a point: 100 kW after 1000 h: (300+100)/2 x 1000 + 100/2 x 5000 = 450 MWh.
	p = read(t, strings.Replace(triangle, "base 0 %", "base 0 % {\n    point 1000 h 33.33333333333333 %\n  }", 1))
	r = Run(p)
	if got := get("year-heat", Plain) / 3.6e9; math.Abs(got-450) > 1e-9 {
		t.Errorf("heat through a point: %g MWh, want 450", got)
	}
}

// What is not stated is not evaluated, and says what it needs.
func TestYearLacks(t *testing.T) {
	for _, c := range []struct{ old, new, name, needs string }{
		{"  load-curve 6000 h base 0 %\n", "", "year-heat", "load-curve"},
		{"6000 h base 0 %", "6000 h", "year-heat", "base of the load-curve"},
		{"base 0 %", "base 0 % {\n    point 7000 h 50 %\n  }", "year-heat", "can be followed"},
		{"  strategy fewest-units\n", "", "hours-at-least", "strategy"},
		{"swing 10 K", "most 6 starts/h", "year-starts", "swing"},
		{"  content 180 l primary\n", "  fill 1 bar primary\n", "year-starts", "water content"},
		{" weather-led", "", "heat-condensing", "weather-led"},
		{"co2 9 % at full", "limiter 90 degC", "heat-condensing", "CO2"},
		{"  input-low 20 kW net\n", "", "hours-below-least", "least input"},
		{"units U1..U3 {", "units U4 {\n  output 50 kW at 70/50 degC\n  input 50 kW net\n  input-low 10 kW net\n}\nunits U1..U3 {", "hours-at-least", "lead fixed"},
	} {
		p := read(t, strings.Replace(triangle, c.old, c.new, 1))
		q := Run(p).Get(p.UnitGroup(), c.name, Always)
		if q.Known() || q == nil || !strings.Contains(q.Missing, c.needs) {
			t.Errorf("without %q: %s is %+v, must need %q", c.old, c.name, q, c.needs)
		}
	}
}

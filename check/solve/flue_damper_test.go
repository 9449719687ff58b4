package solve

import (
	"math"
	"strings"
	"testing"

	"example.org/tundish/check/calc/flue"
)

const tall = `language "1"
plant "Test plant, invented" revision R1 date 2026-01-19
basis {
  altitude 0 m
  exposure sheltered
  gas natural 38.9 MJ/m3 gross
  primary 75/55 degC
}
units U1..U3 {
  fan-pressure {
    full 180 Pa
    low 28 Pa
  }
  flue-data {
    gas-flow 169 kg/h at full
    gas-flow 35 kg/h at low
    co2 9 % at full
    temperature 62 degC at full
    temperature 45 degC at low
    through-loss 60 Pa 169 kg/h
  }
}
flue Flue-A {
  connector C1..C3 polypropylene DN110 0.6 m from U1..U3 to Head-F bends 1 off
  header Head-F polypropylene DN250 2 m from C1..C3 to Riser
  riser Riser polypropylene DN250 30 m from Head-F to Term
  terminal Term roof 1.5 m above open-cone
}
`

// A tall riser draws air through the stopped unit: at the flow found, what the
// unit loses is what the flue draws, by a balance of its own.
func TestDamperOpenDraws(t *testing.T) {
	p := read(t, tall)
	r := Run(p)
	c := &Context{Results: NewResults(p), P: p}
	m := newFlueModel(c, p.ByKind("flue")[0])
	for u, unit := range p.Units() {
		back := r.Get(unit, "flue-back-pressure", FanFailed)
		q := r.Get(unit, "flue-back-flow", DamperOpen)
		if !back.Known() || !q.Known() || back.Num >= 0 || q.Num >= 0 {
			t.Fatalf("%s: back %+v, flow %+v", unit.Label(), back, q)
		}
		for i := range m.units {
			m.set(i, &m.units[i].full)
		}
		air := -q.Num
		m.firings[u] = flue.Firing{Duct: u, MassFlow: air, Temperature: 20}
		if err := m.common.Balance(m.firings, m.states); err != nil {
			t.Fatal(err)
		}
		lost := 60 * math.Pow(air/(169./3600), 2)
		if d := lost + m.states[u].Start; math.Abs(d) > 0.02 {
			t.Errorf("%s: the unit loses %g Pa, the flue draws %g Pa", unit.Label(), lost, -m.states[u].Start)
		}
		for i, o := range p.Units() {
			if i == u {
				continue
			}
			least := r.Get(o, "flue-margin", DamperOpen)
			if margin := m.firings[i].Margin(m.states); !least.Known() || least.Num > margin+0.02 {
				t.Errorf("%s with the damper of %s open: margin %g, least stored %+v", o.Label(), unit.Label(), margin, least)
			}
		}
	}
}

// A short riser is under pressure: by hand the flow is the root of the pressure
// over the sum of both resistances; a unit that is as tight as can be lets
// nothing through.
func TestDamperOpenPushes(t *testing.T) {
	low := strings.Replace(strings.Replace(tall, "DN250 30 m", "DN150 3 m", 1), "DN250 2 m", "DN150 2 m", 1)
	p := read(t, low)
	r := Run(p)
	u := p.Units()[0]
	back, q := r.Get(u, "flue-back-pressure", FanFailed), r.Get(u, "flue-back-flow", DamperOpen)
	if !back.Known() || !q.Known() || back.Num <= 0 {
		t.Fatalf("back %+v, flow %+v", back, q)
	}
	// Connector: 0.6 m of DN110, a bend and the entry; its own loss at full fire.
	full := 169. / 3600
	connector := 0.0
	for _, in := range q.Inputs {
		if in.Name == "lost in the connector at full fire" {
			connector = in.Num
		}
	}
	if want := full * math.Sqrt(back.Num/(60+connector)); math.Abs(q.Num/want-1) > 1e-9 {
		t.Errorf("flow %g kg/s, want %g", q.Num, want)
	}
	if r.Get(u, "flue-margin", DamperOpen) != nil {
		t.Error("a margin with an open damper that draws nothing")
	}
	p = read(t, strings.Replace(low, "    through-loss 60 Pa 169 kg/h\n", "", 1))
	if q := Run(p).Get(p.Units()[0], "flue-back-flow", DamperOpen); q.Known() || !strings.Contains(q.Missing, "through-loss") {
		t.Errorf("without the loss of the unit: %+v", q)
	}
}

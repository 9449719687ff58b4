package margin

import (
	"math"
	"os"
	"strings"
	"testing"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/rules"
	"example.org/tundish/lang"
)

func input(t *testing.T, name string) Input {
	t.Helper()
	cache := lang.NewCache()
	load := func(name string) (*lang.File, error) {
		b, err := os.ReadFile("../../examples/" + name)
		if err != nil {
			return nil, err
		}
		f := lang.Parse(lang.NewSource(name, string(b)), cache)
		lang.Bind(f, lang.Language())
		return f, nil
	}
	b, err := os.ReadFile("../../examples/" + name)
	if err != nil {
		t.Fatal(err)
	}
	return Input{Name: "x.plant", Text: string(b), Load: load, Cache: cache, Check: func(p *plant.Plant) *check.Report {
		return check.Run(check.Input{Plant: p, Rules: rules.All()})
	}}
}

// By hand: three of four units give 183.6 kW for 165 kW, so the reserve is used
// up at 183.6/165 = 1.1127 times the load, and the whole output at 244.8/165 =
// 1.4836 times.
func TestLoadByHand(t *testing.T) {
	want := map[string]float64{"units.reserve-cover": 183.6 / 165, "units.output.total": 244.8 / 165}
	for _, m := range Margins(input(t, "in-line.plant")) {
		w, ok := want[m.Path]
		if !ok {
			continue
		}
		found := false
		for _, b := range m.Breaks {
			if b.Change == "load" {
				found = true
				if math.Abs(b.Factor-w) > 1e-3*w {
					t.Errorf("%s breaks with %.5f times the load, by hand %.5f", m.Path, b.Factor, w)
				}
			}
		}
		if !found {
			t.Errorf("%s: no load breaks it", m.Path)
		}
		delete(want, m.Path)
	}
	if len(want) > 0 {
		t.Errorf("not compared: %v", want)
	}
}

// At each found change the limit is broken, and a little before it holds: tried
// by writing the change into the text.
func TestBreaksAreBreaks(t *testing.T) {
	for _, name := range []string{"in-line.plant", "back-to-back.plant"} {
		in := input(t, name)
		f := lang.Parse(lang.NewSource(in.Name, in.Text), nil)
		lang.Bind(f, lang.Language())
		byName := map[string]change{}
		for _, ch := range changes(plant.Resolve(f, in.Load)) {
			byName[ch.name] = ch
		}
		tried := 0
		for _, m := range Margins(in) {
			for _, b := range m.Breaks {
				ch, x, before := byName[b.Change], b.Factor, b.Factor*0.995
				if b.Change == "altitude" {
					x, before = b.Altitude, b.Altitude-2
				}
				k := keyOf(&m.Comparison)
				if !in.judge(ch.edits(x))[k] || in.judge(ch.edits(before))[k] {
					t.Errorf("%s: %s does not break at %g of %s", name, m.Path, x, b.Change)
				}
				tried++
			}
		}
		if tried < 3 {
			t.Errorf("%s: only %d breaks", name, tried)
		}
	}
}

// Every kind of change does something to some limit, and a limit that is broken
// already has no breaks.
func TestKinds(t *testing.T) {
	kinds := map[string]bool{}
	for _, name := range []string{"back-to-back.plant", "in-line.plant"} {
		for _, m := range Margins(input(t, name)) {
			for _, b := range m.Breaks {
				kinds[b.Change] = true
			}
		}
	}
	for _, want := range []string{"load", "length of gas-run", "altitude", "length of flue"} {
		if !kinds[want] {
			t.Errorf("nothing breaks by the %s: %v", want, kinds)
		}
	}
	broken := 0
	for _, m := range Margins(input(t, "l-shaped-faulty.plant")) {
		if !m.Holds {
			broken++
			if len(m.Breaks) > 0 {
				t.Errorf("%s is broken and has breaks", m.Path)
			}
		}
	}
	if broken == 0 {
		t.Error("the faulty plant breaks no limit")
	}
}

// The numbers written into the text are read again as they were.
func TestNumber(t *testing.T) {
	for _, v := range []float64{0.001, 12, 1234567.25} {
		toks := lang.Tokens(number(v) + " m")
		if len(toks) < 2 || toks[0].Kind != lang.NumberToken || strings.Contains(number(v), "e") {
			t.Errorf("%g is written %q", v, number(v))
		}
	}
}

package steps

import (
	"math"
	"math/rand/v2"
	"os"
	"path"
	"slices"
	"strings"
	"testing"

	"example.org/tundish/check/parts"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
	"example.org/tundish/testdata/plants"
)

var examples = []string{"back-to-back", "in-line", "us-units", "l-shaped-faulty"}

func read(t testing.TB, name string) string {
	t.Helper()
	b, err := os.ReadFile("../../examples/" + name + ".plant")
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

func resolve(name, text string) *plant.Plant {
	parse := func(name, text string) *lang.File {
		f := lang.Parse(lang.NewSource(name, text), nil)
		lang.Bind(f, lang.Language())
		return f
	}
	return plant.Resolve(parse(name, text), func(name string) (*lang.File, error) {
		b, err := os.ReadFile("../../examples/" + path.Base(name))
		return parse(name, string(b)), err
	})
}

func stepsOf(t testing.TB, name string) (*plant.Plant, *List) {
	t.Helper()
	p := resolve("examples/"+name+".plant", read(t, name))
	return p, Of(p, solve.Run(p))
}

// before lists what must come before what on site, written down from the trade's
// rules and not from the package: each pair counts where the plant has both.
var before = [][2]string{
	{"survey", "old-circuits"},
	{"survey", "site"},
	{"survey", "frame"},
	{"survey", "supports"},
	{"site", "frame"},
	{"delivery", "frame"},
	{"frame", "supports"},
	{"frame", "units"},
	{"supports", "gas-manifold"},
	{"supports", "return-header"},
	{"supports", "flow-header"},
	{"supports", "main-pipes"},
	{"supports", "gas-supply"},
	{"return-header", "units"},
	{"flow-header", "units"},
	{"gas-manifold", "units"},
	{"units", "unit-pipework"},
	{"units", "gas-drops"},
	{"units", "dampers"},
	{"units", "condensate"},
	{"units", "wiring"},
	{"dampers", "flue"},
	{"dampers", "first-fire"},
	{"separation", "main-pipes"},
	{"old-circuits", "main-pipes"},
	{"unit-pipework", "strength-test"},
	{"main-pipes", "strength-test"},
	{"safety-devices", "strength-test"},
	{"flow-header", "strength-test"},
	{"return-header", "strength-test"},
	{"strength-test", "insulation"},
	{"strength-test", "flushing"},
	{"strength-test", "fill"},
	{"flushing", "insulation"},
	{"flushing", "fill"},
	{"gas-manifold", "gas-tightness-test"},
	{"gas-drops", "gas-tightness-test"},
	{"gas-supply", "gas-tightness-test"},
	{"gas-strength-test", "gas-tightness-test"},
	{"gas-tightness-test", "purge"},
	{"air", "purge"},
	{"purge", "first-fire"},
	{"fill", "first-fire"},
	{"flue", "first-fire"},
	{"condensate", "first-fire"},
	{"electrical-test", "first-fire"},
	{"wiring", "electrical-test"},
	{"first-fire", "commissioning"},
	{"commissioning", "handover"},
	{"insulation", "handover"},
}

// The order keeps every pair, and not by chance: what comes first is reached by
// the stated waits.
func TestOrder(t *testing.T) {
	for _, name := range examples {
		_, l := stepsOf(t, name)
		at, after := map[string]int{}, map[string][]string{}
		for i, s := range l.Steps {
			if _, twice := at[s.ID]; twice {
				t.Errorf("%s: %s stands twice", name, s.ID)
			}
			at[s.ID], after[s.ID] = i, s.After
		}
		if len(l.Steps) < 25 {
			t.Errorf("%s: only %d steps", name, len(l.Steps))
		}
		var waits func(id, on string) bool
		waits = func(id, on string) bool {
			return slices.ContainsFunc(after[id], func(d string) bool { return d == on || waits(d, on) })
		}
		for _, pair := range before {
			a, ok1 := at[pair[0]]
			b, ok2 := at[pair[1]]
			if !ok1 || !ok2 {
				continue
			}
			if a >= b {
				t.Errorf("%s: %s comes after %s", name, pair[0], pair[1])
			}
			if !waits(pair[1], pair[0]) {
				t.Errorf("%s: %s does not wait for %s", name, pair[1], pair[0])
			}
		}
		for i, s := range l.Steps {
			for _, d := range s.After {
				if j, ok := at[d]; !ok || j >= i {
					t.Errorf("%s: %s waits for %s", name, s.ID, d)
				}
			}
			if len(s.Why) == 0 {
				t.Errorf("%s: nothing asks for %s", name, s.ID)
			}
		}
	}
}

// The lower header is fitted first, whichever it is.
func TestLowerHeaderFirst(t *testing.T) {
	text := read(t, "in-line")
	if strings.Count(text, " upper from") != 1 || strings.Count(text, " lower from") != 1 {
		t.Fatal("the example has changed")
	}
	text = strings.NewReplacer(" upper from", " lower from", " lower from", " upper from").Replace(text)
	p := resolve("examples/x.plant", text)
	l := Of(p, solve.Run(p))
	flow := slices.IndexFunc(l.Steps, func(s Step) bool { return s.ID == "flow-header" })
	back := slices.IndexFunc(l.Steps, func(s Step) bool { return s.ID == "return-header" })
	if flow < 0 || back < 0 || flow > back {
		t.Errorf("flow header at %d, return header at %d", flow, back)
	}
}

// Every part of the list of parts is placed, each share in exactly one step.
func TestEveryPartOnce(t *testing.T) {
	type key struct{ pkg, name, size, unit string }
	type share struct {
		key
		file string
		line int
		note string
	}
	for _, name := range examples {
		p, l := stepsOf(t, name)
		want := map[key]float64{}
		for _, line := range parts.Of(p).Lines {
			want[key{line.Package, line.Name, line.Size, line.Unit}] += line.Quantity
		}
		in := map[share]string{}
		for _, s := range l.Steps {
			for _, x := range s.Parts {
				k := key{x.Package, x.Name, x.Size, x.Unit}
				want[k] -= x.Quantity
				for _, y := range x.Why {
					sh := share{k, y.File, y.Line, y.Note}
					if other, twice := in[sh]; twice {
						t.Errorf("%s: %v in %s and %s", name, sh, other, s.ID)
					}
					in[sh] = s.ID
				}
			}
		}
		for k, left := range want {
			if math.Abs(left) > 1e-9 {
				t.Errorf("%s: %v: %g not placed", name, k, left)
			}
		}
	}
}

// The hold points that nobody may pass, and what waits behind each.
func TestHolds(t *testing.T) {
	for _, name := range examples {
		_, l := stepsOf(t, name)
		for id, next := range map[string]string{"frame": "supports", "gas-tightness-test": "purge", "purge": "first-fire", "strength-test": "flushing", "first-fire": "commissioning"} {
			s := l.Find(id)
			if s == nil || len(s.Holds) == 0 {
				t.Errorf("%s: no hold point in %s", name, id)
				continue
			}
			if h := s.Holds[0]; h.Witness == "" || l.Find(next) != nil && !slices.Contains(h.Before, next) {
				t.Errorf("%s: %s holds %v, not %s", name, id, h.Before, next)
			}
		}
		if s := l.Find("dampers"); s != nil && len(s.Holds) == 0 {
			t.Errorf("%s: no hold point at the dampers", name)
		}
	}
}

// Cautions stand at the steps where they matter; one that is called for and not
// carried is printed too and says so.
func TestCautions(t *testing.T) {
	_, l := stepsOf(t, "back-to-back")
	has := func(l *List, id, topic string) *Caution {
		for i := range l.Find(id).Cautions {
			if c := &l.Find(id).Cautions[i]; c.Topic == topic {
				return c
			}
		}
		return nil
	}
	for _, x := range [][2]string{{"units", "tip-over"}, {"units", "lifting"}, {"purge", "gas"}, {"flue", "height"}, {"strength-test", "pressure"}, {"wiring", "electrical"}, {"first-fire", "carbon-monoxide"}, {"survey", "asbestos"}} {
		if c := has(l, x[0], x[1]); c == nil || c.Missing || c.From.Line == 0 {
			t.Errorf("%s: caution %s: %+v", x[0], x[1], c)
		}
	}
	_, l = stepsOf(t, "l-shaped-faulty")
	if c := has(l, "units", "tip-over"); c == nil || !c.Missing {
		t.Errorf("not carried: %+v", c)
	}
}

// A unit of 94 kg is no lift by hand; a section of 31 kg is one for two people:
// 25 kg at the waist, two carry 2/3 of the sum.
func TestLifts(t *testing.T) {
	_, l := stepsOf(t, "back-to-back")
	if u := l.Find("units").Lifts[0]; u.People != 0 || u.Mass != 94 || u.Count != 8 || !strings.Contains(u.Stated, "hoist for 250 kg, 2 people, by a lift plan") {
		t.Errorf("units: %+v", u)
	}
	if e := l.Find("separation").Lifts[0]; e.People != 0 || e.Mass != 385 || e.Stated != "" {
		t.Errorf("the gear for units is told of the exchanger: %+v", e)
	}
	p := resolve("examples/x.plant", strings.Replace(read(t, "back-to-back"), "hoist 250 kg", "hoist 60 kg", 1))
	if u := Of(p, solve.Run(p)).Find("units").Lifts[0]; !strings.Contains(u.Stated, "less than this piece") {
		t.Errorf("a hoist too weak: %s", u.Stated)
	}
	if s := l.Find("frame").Lifts[0]; s.People != 2 || s.Mass != 31 || math.Abs(s.ByHand-100.0/3) > 1e-9 {
		t.Errorf("sections: %+v", s)
	}
}

// The words of the language are the steps of this package.
func TestWordsOfTheLanguage(t *testing.T) {
	if got := IDs(); !slices.Equal(got, lang.BuildSteps) {
		t.Errorf("steps %v\nwords %v", got, lang.BuildSteps)
	}
	for _, c := range careAt {
		for _, s := range c.steps {
			if find(s) == nil {
				t.Errorf("caution %s at an unknown step %s", c.topic, s)
			}
		}
	}
	for i := range kinds {
		for _, d := range kinds[i].after(&builder{p: resolve("x.plant", "plant \"Test, invented\"\n")}) {
			if find(d) == nil {
				t.Errorf("%s waits for an unknown step %s", kinds[i].id, d)
			}
		}
	}
}

// Half-typed texts break nothing, and their order still holds together.
func TestHalfTyped(t *testing.T) {
	step := 97
	if testing.Short() {
		step = 997
	}
	for _, name := range examples {
		text := read(t, name)
		for n := 0; n < len(text); n += step {
			p := resolve("examples/x.plant", text[:n])
			l := Of(p, solve.Run(p))
			seen := map[string]bool{}
			for _, s := range l.Steps {
				for _, d := range s.After {
					if !seen[d] {
						t.Fatalf("%s cut at %d: %s before %s", name, n, s.ID, d)
					}
				}
				seen[s.ID] = true
			}
		}
	}
}

// Sound plants at random, of one unit to eight: every part is placed once, and
// the order keeps the pairs.
func TestAtRandom(t *testing.T) {
	n := 60
	if testing.Short() {
		n = 10
	}
	for seed := range uint64(n) {
		p := resolve("examples/x.plant", plants.Sound(rand.New(rand.NewPCG(seed, 3))))
		l := Of(p, solve.Run(p))
		at := map[string]int{}
		placed := 0.0
		for i := range l.Steps {
			at[l.Steps[i].ID] = i + 1
			for _, x := range l.Steps[i].Parts {
				placed += x.Quantity
			}
		}
		for _, pair := range before {
			if a, b := at[pair[0]], at[pair[1]]; a > 0 && b > 0 && a >= b {
				t.Errorf("seed %d: %s comes after %s", seed, pair[0], pair[1])
			}
		}
		want := 0.0
		for _, line := range parts.Of(p).Lines {
			want += line.Quantity
		}
		if math.Abs(placed-want) > 1e-6 {
			t.Errorf("seed %d: %g of %g parts and meters placed", seed, placed, want)
		}
		if s := l.Find("units"); len(s.States) != len(p.Units())+1 || len(s.Safe) != 1 {
			t.Errorf("seed %d: %d states for %d units", seed, len(s.States), len(p.Units()))
		}
	}
}

// Plants without a frame, or of one unit, have steps too.
func TestSmallPlants(t *testing.T) {
	p := resolve("examples/x.plant", `plant "Test plant, invented"
use "catalogue.plant"
basis {
  jurisdiction UK
}
units U1 {
  type Wall-60
}
gas-run {
  meter Meter 16 m3/h
  pipe G1 steel DN32 4 m from Meter to U1
}
`)
	l := Of(p, solve.Run(p))
	if l.Find("frame") != nil || l.Find("separation") != nil {
		t.Error("steps of what the plant lacks")
	}
	u := l.Find("units")
	if u == nil || !slices.ContainsFunc(u.Holds, func(h Hold) bool { return strings.Contains(h.Text, "Wall") }) {
		t.Errorf("units on a wall: %+v", u)
	}
	s := l.Find("gas-tightness-test")
	if s == nil || len(s.Open) == 0 {
		t.Error("a tightness test that is not stated is not told")
	}
}

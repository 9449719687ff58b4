package parts_test

import (
	"fmt"
	"math"
	"os"
	"path"
	"testing"

	"example.org/tundish/check/parts"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

func resolve(t testing.TB, name, text string) *plant.Plant {
	t.Helper()
	parse := func(name, text string) *lang.File {
		f := lang.Parse(lang.NewSource(name, text), nil)
		lang.Bind(f, lang.Language())
		return f
	}
	return plant.Resolve(parse(name, text), func(name string) (*lang.File, error) {
		b, err := os.ReadFile("../../" + name)
		return parse(name, string(b)), err
	})
}

func example(t testing.TB, name string) *plant.Plant {
	t.Helper()
	name = path.Join("examples", name+".plant")
	b, err := os.ReadFile("../../" + name)
	if err != nil {
		t.Fatal(err)
	}
	return resolve(t, name, string(b))
}

// counted is a second count of examples/back-to-back.plant, made by hand from
// its text: eight units, four frame sections of 1.30 m in two arms, headers and
// manifold of 4.6 m in four pieces with three joints, a flange for each steel
// pipe over DN50, bolts by EN 1092-1 PN16 (DN100 and DN125: eight M16, DN150:
// eight M20).
var counted = []struct {
	pkg, name, size string
	quantity        float64
	unit            string
}{
	{"frame", "straight frame section", "1.3 m", 4, "off"},
	{"frame", "section coupling", "", 2, "off"}, // two arms of two sections
	{"frame", "back-to-back link", "", 1, "off"},
	{"frame", "adjustable foot", "", 10, "off"},
	{"frame", "floor anchor", "", 10, "off"},

	{"unit sets", "unit", "Wall-100", 8, "off"},
	{"unit sets", "union", "1 1/4 in", 8 * 2, "off"},
	{"unit sets", "flat seal", "1 1/4 in", 8 * 2, "off"},
	{"unit sets", "pump", "Ring-32-80", 8, "off"},
	{"unit sets", "flat seal", "DN32", 8 * 2, "off"},
	{"unit sets", "pump valve", "DN32", 8 * 2, "off"},
	{"unit sets", "non-return valve", "DN32", 8, "off"},
	{"unit sets", "gas valve", "DN25", 8, "off"},
	{"unit sets", "gas union", "DN25", 8, "off"},
	{"unit sets", "gas test point", "", 8, "off"},
	{"unit sets", "isolating valve", "DN32", 8 * 2, "off"},
	{"unit sets", "strainer", "DN32", 8, "off"},
	{"unit sets", "drain cock", "DN15", 8, "off"},
	{"unit sets", "automatic air vent", "DN15", 8, "off"},
	{"unit sets", "flue damper", "DN110", 8, "off"},
	{"unit sets", "thermometer", "", 8 * 2, "off"},
	{"unit sets", "thermometer pocket", "", 8 * 2, "off"},
	{"unit sets", "pressure gauge", "to 6 bar", 8, "off"},
	{"unit sets", "safety valve", "DN20 3 bar", 8, "off"},
	{"unit sets", "low-water cut-out", "0.8 bar", 8, "off"},
	{"unit sets", "high-pressure cut-out", "2.7 bar", 8, "off"},
	{"unit sets", "temperature limiter", "95 degC", 8, "off"},
	{"unit sets", "condensate trap", "seal 120 mm", 8, "off"},
	{"unit sets", "cap", "DN20", 8, "off"},
	{"unit sets", "flat seal", "DN20", 8, "off"},
	{"unit sets", "electrical isolator", "", 8, "off"},

	{"gas run", "gas regulator", "21 mbar", 1, "off"},
	{"gas run", "slam-shut valve", "", 1, "off"},
	{"gas run", "gas meter", "100 m3/h", 1, "off"},
	{"gas run", "emergency gas valve", "DN100", 1, "off"},
	{"gas run", "steel pipe", "DN100", 22 + 3, "m"},
	{"gas run", "steel pipe", "DN32", 8 * 0.9, "m"},
	{"gas run", "steel bend", "DN100", 5 + 2, "off"},
	{"gas run", "steel bend", "DN32", 8 * 2, "off"},
	// 22 m by 3 m: 8; 3 m by 3 m: 1; manifold 4.6 m by 1.3 m: 4 and one more.
	{"gas run", "pipe support", "DN100", 8 + 1 + 5, "off"},
	{"gas run", "pipe support", "DN32", 8, "off"},
	{"gas run", "steel manifold", "DN100", 4.6, "m"},
	{"gas run", "take-off", "DN100 to DN32", 8, "off"},
	// Meter, both sides of Shut-1, start of the manifold, three joints, blank.
	{"gas run", "gasket", "DN100", 1 + 2 + 1 + 3 + 1, "off"},
	{"gas run", "bolt with nut", "M16", 8 * 8, "off"},
	{"gas run", "flange", "DN100", 1 + 2 + 1, "off"},
	{"gas run", "blank flange", "DN100", 1, "off"},
	{"gas run", "purge point", "DN20", 1, "off"},
	{"gas run", "plug", "DN20", 1, "off"},
	{"gas run", "gas test point", "DN8", 1, "off"},
	{"gas run", "sleeve", "DN100", 1, "off"},
	{"gas run", "sleeve seal", "", 1, "off"},

	{"headers", "steel header", "DN150", 2 * 4.6, "m"},
	{"headers", "pipe support", "DN150", 2 * 5, "off"},
	{"headers", "take-off", "DN150 to DN40", 2 * 8, "off"},
	// Each header: three joints, its pipe, its blank.
	{"headers", "gasket", "DN150", 2 * (3 + 1 + 1), "off"},
	{"headers", "bolt with nut", "M20", 2 * 5 * 8, "off"},
	{"headers", "flange", "DN150", 2, "off"},
	{"headers", "blank flange", "DN150", 2, "off"},
	{"headers", "reducer", "DN150 to DN125", 2, "off"},
	{"headers", "reducer", "DN125 to DN100", 2, "off"}, // at the exchanger
	{"headers", "steel pipe", "DN40", 8 * (1.4 + 1.1), "m"},
	{"headers", "steel bend", "DN40", 8 * (3 + 3), "off"},
	{"headers", "pipe support", "DN40", 8 * 2, "off"},
	{"headers", "steel pipe", "DN125", 4.5 + 5.1, "m"},
	{"headers", "steel bend", "DN125", 4 + 4, "off"},
	{"headers", "pipe support", "DN125", 2 + 2, "off"},
	{"headers", "strainer", "DN125", 1, "off"},
	{"headers", "air separator", "DN125", 1, "off"},
	{"headers", "gasket", "DN125", 2 * 2, "off"},
	{"headers", "bolt with nut", "M16", 2 * 2 * 8, "off"},
	{"headers", "flange", "DN125", 2 * 2, "off"},
	{"headers", "automatic air vent", "DN15", 1, "off"},
	{"headers", "drain cock", "DN25", 1, "off"},
	{"headers", "thermometer", "", 2, "off"},
	{"headers", "thermometer pocket", "", 2, "off"},
	{"headers", "pressure gauge", "to 6 bar", 1, "off"},
	{"headers", "test cock", "", 1, "off"},

	{"separation", "plate heat exchanger", "Plate-44", 1, "off"},
	{"separation", "insulation of plate heat exchanger", "Plate-44", 1, "off"},
	{"separation", "gasket", "DN100", 4, "off"},
	{"separation", "flange", "DN100", 4, "off"},
	{"separation", "magnetic filter", "DN125", 1, "off"},
	{"separation", "gasket", "DN125", 2, "off"},
	{"separation", "flange", "DN125", 2, "off"},
	{"separation", "bolt with nut", "M16", (4 + 2) * 8, "off"},

	{"secondary", "steel pipe", "DN125", 9, "m"},
	{"secondary", "steel bend", "DN125", 6, "off"},
	{"secondary", "pipe support", "DN125", 3, "off"},
	{"secondary", "reducer", "DN125 to DN100", 1, "off"},

	{"safety", "expansion vessel", "80 l", 1, "off"},
	{"safety", "expansion vessel", "1000 l", 1, "off"},
	{"safety", "lockable vessel valve", "", 2, "off"},
	{"safety", "drain cock", "", 2, "off"},
	{"safety", "safety valve", "DN50 3 bar", 1, "off"},
	{"safety", "copper pipe", "42 mm", 3.8, "m"},
	{"safety", "copper bend", "42 mm", 3, "off"},
	{"safety", "pipe support", "42 mm", 2, "off"}, // 3.8 m by 2.4 m
	{"safety", "steel pipe", "DN65", 1.8, "m"},
	{"safety", "steel bend", "DN65", 2, "off"},
	{"safety", "pipe support", "DN65", 1, "off"},
	{"safety", "tundish", "", 2, "off"},
	{"safety", "cap", "DN20", 2, "off"},
	{"safety", "pressurisation set with its cut-outs", "", 1, "off"},
	{"safety", "break-tank", "", 1, "off"},

	{"flue", "polypropylene flue pipe", "DN110", 8 * 0.6, "m"},
	{"flue", "polypropylene flue bend 90 deg", "DN110", 8, "off"},
	{"flue", "flue seal", "DN110", 8 * 4, "off"}, // unit, damper, pipe, bend
	{"flue", "flue support", "DN110", 8, "off"},
	{"flue", "polypropylene flue pipe", "DN400", 5.6 + 14, "m"},
	{"flue", "polypropylene flue entry", "DN400 to DN110", 8, "off"},
	{"flue", "polypropylene flue drain piece", "DN400", 1, "off"},
	{"flue", "polypropylene flue bend 90 deg", "DN400", 1, "off"},
	{"flue", "inspection opening", "DN400", 1, "off"},
	// Header: 3 pieces, 8 entries, drain, cap. Riser: 7 pieces, bend.
	{"flue", "flue seal", "DN400", 3 + 8 + 1 + 1 + 7 + 1, "off"},
	// Header 5.6 m: 6 and one more; riser 14; its bend.
	{"flue", "flue support", "DN400", 7 + 14 + 1, "off"},
	{"flue", "fire stop", "DN400", 1, "off"},
	{"flue", "flue sleeve", "DN400", 1, "off"},
	{"flue", "flue end cap", "DN400", 1, "off"},
	{"flue", "flue terminal open-cone", "DN400", 1, "off"},
	{"flue", "water-based lubricant for seals", "", 1, "off"},

	{"condensate", "polypropylene drain pipe", "50 mm", 6.5, "m"},
	{"condensate", "drain entry", "50 mm", 8, "off"},
	{"condensate", "flue trap", "seal 200 mm", 1, "off"},
	{"condensate", "neutralizer", "140 l/h", 1, "off"},

	{"air and detection", "ventilation louvre", "1900 cm2 free", 1, "off"},
	{"air and detection", "ventilation louvre", "3800 cm2 free", 1, "off"},
	{"air and detection", "natural-gas detector", "", 1, "off"},
	{"air and detection", "carbon-monoxide detector", "", 1, "off"},
	{"air and detection", "sounder", "", 2, "off"},
	{"air and detection", "emergency stop", "", 1, "off"},
	{"air and detection", "fire alarm interface", "", 1, "off"},
	{"air and detection", "heat detector", "72 degC", 8, "off"},

	{"electrical", "panel", "400 V 63 A", 1, "off"},
	{"electrical", "cable", "damper", 8, "off"},
	{"electrical", "cable", "pump", 8, "off"},
	{"electrical", "cable", "sensor", 3, "off"},
	{"electrical", "bus cable", "two-core", 7, "off"},
	{"electrical", "flow-temperature sensor", "", 2, "off"},
	{"electrical", "outside-temperature sensor", "", 1, "off"},
	{"electrical", "sensor pocket", "", 2, "off"},
	{"electrical", "bonding clamp with conductor", "", 2, "off"},
	{"electrical", "residual current device", "30 mA", 1, "off"},

	{"insulation", "mineral-wool pipe section", "50 mm on DN150", 2 * 4.6, "m"},
	{"insulation", "mineral-wool pipe section", "50 mm on DN125", 4.5 + 5.1 + 9, "m"},
	{"insulation", "mineral-wool bend cover", "50 mm on DN125", 4 + 4 + 6, "off"},
	{"insulation", "mineral-wool pipe section", "40 mm on DN40", 8 * (1.4 + 1.1), "m"},
	{"insulation", "mineral-wool bend cover", "40 mm on DN40", 8 * (3 + 3), "off"},
}

// TestSecondCount holds the list against the count by hand: nothing more,
// nothing less, nothing different.
func TestSecondCount(t *testing.T) {
	list := parts.Of(example(t, "back-to-back"))
	for _, g := range list.Gaps {
		t.Errorf("%s needs %s", g.Address, g.Needs)
	}
	got := map[string]float64{}
	for _, l := range list.Lines {
		k := fmt.Sprintf("%s | %s | %s | %s", l.Package, l.Name, l.Size, l.Unit)
		if _, twice := got[k]; twice {
			t.Errorf("%s stands twice", k)
		}
		got[k] = l.Quantity
	}
	for _, w := range counted {
		k := fmt.Sprintf("%s | %s | %s | %s", w.pkg, w.name, w.size, w.unit)
		n, ok := got[k]
		if !ok || math.Abs(n-w.quantity) > 1e-9 {
			t.Errorf("%s: %g, counted by hand %g", k, n, w.quantity)
		}
		delete(got, k)
	}
	for k, n := range got {
		t.Errorf("%s: %g, not in the count by hand", k, n)
	}
}

// TestWhy follows every line back to a statement that exists, and holds the
// shares of the reasons against the sum.
func TestWhy(t *testing.T) {
	for _, name := range []string{"in-line", "back-to-back", "us-units", "l-shaped-faulty"} {
		p := example(t, name)
		list := parts.Of(p)
		if len(list.Lines) < 40 {
			t.Errorf("%s: only %d lines", name, len(list.Lines))
		}
		lines := map[int]bool{}
		for _, part := range p.All {
			if part.Stmt != nil {
				n, _ := part.File.Source.Position(part.Span().Start)
				lines[n] = true
			}
		}
		for _, l := range list.Lines {
			sum := 0.0
			for _, w := range l.Why {
				sum += w.Quantity
				if w.Address == "" || w.File != p.File.Source.Name && w.File != "examples/catalogue.plant" {
					t.Errorf("%s: %s %s: reason %+v", name, l.Name, l.Size, w)
				}
				if w.File == p.File.Source.Name && !lines[w.Line] {
					t.Errorf("%s: %s %s: no statement in line %d", name, l.Name, l.Size, w.Line)
				}
			}
			if math.Abs(sum-l.Quantity) > 1e-9 {
				t.Errorf("%s: %s %s: reasons add up to %g of %g", name, l.Name, l.Size, sum, l.Quantity)
			}
		}
	}
}

// What is not stated is a gap and no zero.
func TestGaps(t *testing.T) {
	list := parts.Of(resolve(t, "t.plant", `plant "Test plant, invented"
gas-run {
  meter Meter 40 m3/h
  pipe G1 steel DN50 from Meter to Man-A
  manifold Man-A steel DN65 2.6 m feeds U1 support 1 m
}
units U1 {
}
frame F in-line {
  feet unknown
}
`))
	want := map[string]bool{
		"the length of G1": true, "the feet of F": true, "the sections of F": true,
		"the size of the water connections of U1 (water-connection)": true,
		"the length of a frame section, to know the pieces of Man-A": true,
	}
	for _, g := range list.Gaps {
		if !want[g.Needs] {
			t.Errorf("unexpected gap: %s (line %d)", g.Needs, g.Line)
		}
		delete(want, g.Needs)
	}
	for n := range want {
		t.Errorf("no gap: %s", n)
	}
}

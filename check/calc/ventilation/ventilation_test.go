package ventilation_test

import (
	"encoding/csv"
	"errors"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"example.org/tundish/check/calc/ventilation"
)

func near(tb testing.TB, what string, got, want float64) {
	tb.Helper()
	if !(math.Abs(got-want) <= 1e-9*math.Abs(want)) {
		tb.Errorf("%s: got %.10g, want %.10g", what, got, want)
	}
}

func must[T any](tb testing.TB) func(v T, err error) T {
	return func(v T, err error) T {
		tb.Helper()
		if err != nil {
			tb.Fatal(err)
		}
		return v
	}
}

// TestWorked compares with the rows of worked/gas-flue-air.csv that this
// package answers; each row names its source and how it was read. The row
// "outside air opening (older rule)" stands for a superseded edition and is
// answered by no function.
func TestWorked(t *testing.T) {
	number, areas, flows := must[float64](t), must[ventilation.Areas](t), must[ventilation.Flows](t)
	compartment := areas(ventilation.Small(15e3, ventilation.SmallCompartment))
	sealed := areas(ventilation.Natural(400e3, ventilation.RoomSealedInRoom, 0))
	near(t, "high is low", sealed.High, sealed.Low)
	got := map[string]string{
		"combustion air volume|120000":           word(number(ventilation.IndoorVolume(120000)), "ft3"),
		"combustion air transfer opening|112000": word(number(ventilation.OpeningArea(112000, ventilation.Transfer)), "in2"),
		"KAIR fan-assisted|150000":               word(number(ventilation.KnownInfiltrationVolume(150000, 0.40, true)), "ft3"),
		"KAIR other|150000":                      word(number(ventilation.KnownInfiltrationVolume(150000, 0.40, false)), "ft3"),
		"KAIR fan-assisted|120000":               word(number(ventilation.KnownInfiltrationVolume(120000, 0.20, true)), "ft3"),
		"open-flue vent (<=70 kW)|20":            word(1e4*areas(ventilation.Small(20e3, ventilation.SmallRoom)).Low, "cm2"),
		"compartment vent open-flued, direct to outside|15": word(1e4*compartment.High, "high; ") +
			word(1e4*compartment.Low, "low"),
		"plant-room vent, room-sealed|400": word(1e4*sealed.Low, "cm2 each"),
		"mechanical vent extract|400":      word(3600*flows(ventilation.Mechanical(400e3, false, 0)).Extract, "m3/h"),
	}
	text, err := os.ReadFile("../../../testdata/worked/gas-flue-air.csv")
	if err != nil {
		t.Fatal(err)
	}
	records, err := csv.NewReader(lenient(string(text))).ReadAll()
	seen := map[string]bool{}
	for _, rec := range records {
		for key, answer := range got {
			topic, start, _ := strings.Cut(key, "|")
			if rec[0] == topic && strings.HasPrefix(rec[1], start) {
				seen[key] = true
				if answer != rec[2] {
					t.Errorf("%s: got %s, want %s", key, answer, rec[2])
				}
			}
		}
	}
	for key := range got {
		if !seen[key] {
			t.Errorf("no row answers to %s (%v)", key, err)
		}
	}
}

// word prints a number as the table does: at most six digits.
func word(v float64, unit string) string { return fmt.Sprintf("%.6g %s", v, unit) }

// lenient fills the short rows of the table, whose last column may be absent.
func lenient(text string) *strings.Reader {
	var b strings.Builder
	for _, line := range strings.Split(strings.TrimSpace(text), "\n") {
		r := csv.NewReader(strings.NewReader(line))
		rec, err := r.Read()
		if err != nil {
			continue
		}
		for len(rec) < 8 {
			rec = append(rec, "")
		}
		w := csv.NewWriter(&b)
		_ = w.Write(rec[:8])
		w.Flush()
	}
	return strings.NewReader(b.String())
}

// TestTable holds figures of the UK tables multiplied by hand for 400 kW net.
func TestTable(t *testing.T) {
	areas := must[ventilation.Areas](t)
	for _, c := range []struct {
		c         ventilation.Case
		summer    float64
		high, low float64 // cm2
	}{
		{ventilation.RoomSealedInRoom, 0, 800, 800},
		{ventilation.RoomSealedInRoom, 0.49, 800, 800},
		{ventilation.OpenFluedInRoom, 0, 800, 1600},
		{ventilation.OpenFluedInRoom, 0.5, 1200, 2000},
		{ventilation.OpenFluedInRoom, 0.75, 1600, 2400},
		{ventilation.OpenFluedInRoom, 1, 1600, 2400},
		{ventilation.OpenFluedInEnclosure, 0, 2000, 4000},
		{ventilation.RoomSealedInEnclosure, 0, 2000, 2000},
		{ventilation.RoomSealedInEnclosureInner, 0, 4000, 4000},
	} {
		a := areas(ventilation.Natural(400e3, c.c, c.summer))
		near(t, "high", 1e4*a.High, c.high)
		near(t, "low", 1e4*a.Low, c.low)
		double := areas(ventilation.Natural(800e3, c.c, c.summer))
		near(t, "twice the input", double.Low, 2*a.Low)
	}
	f := must[ventilation.Flows](t)(ventilation.Mechanical(400e3, false, 0))
	near(t, "inlet", 3600*f.Inlet, 1040)
	near(t, "extract", 3600*f.Extract, 500)
	near(t, "most", 3600*f.MostExtract, 1040-1.17*400)
	near(t, "least", 3600*f.LeastExtract, 500-0.18*400)
	f = must[ventilation.Flows](t)(ventilation.Mechanical(1000e3, true, 0.8))
	near(t, "inlet", 3600*f.Inlet, 2800+1440)
	near(t, "difference", 3600*(f.Inlet-f.Extract), 2070)
	near(t, "Germany", 1e4*must[float64](t)(ventilation.Germany(400e3)), 850)
	tight := areas(ventilation.TightRoom(400e3, 0.4, 1000))
	near(t, "tight room", 1e4*tight.High, 800)
	if a := areas(ventilation.TightRoom(400e3, 0.5, 1000)); a != (ventilation.Areas{}) {
		t.Errorf("a room with 0.5 air changes: %+v", a)
	}
	area, flow, err := ventilation.Cooler(400e3, 2)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "cooler by area", 1e4*area, 160)
	near(t, "cooler by flow", 3600*flow, 120)
}

// TestUS holds figures worked out by hand for 400 kW net, 444 kW gross, that
// is 1 515 700 Btu/h.
func TestUS(t *testing.T) {
	number := must[float64](t)
	const input = 1515700.0
	for o, want := range map[ventilation.Opening]float64{
		ventilation.Direct: 379, ventilation.Single: 505, ventilation.HorizontalDuct: 758, ventilation.Transfer: 1516,
	} {
		if got := number(ventilation.OpeningArea(input, o)); math.Round(got) != want {
			t.Errorf("opening %d: %g in2", o, got)
		}
	}
	near(t, "least transfer opening", number(ventilation.OpeningArea(50000, ventilation.Transfer)), 100)
	near(t, "fan", number(ventilation.USMechanical(100000)), 35)
	near(t, "metal", number(ventilation.FreeArea(100, ventilation.MetalLouver)), 75)
	near(t, "wood", number(ventilation.FreeArea(100, ventilation.WoodLouver)), 25)
	if _, err := ventilation.OpeningArea(1e5, 0); !errors.Is(err, ventilation.ErrOpening) {
		t.Error(err)
	}
	if _, err := ventilation.KnownInfiltrationVolume(1e5, 0.61, true); err == nil {
		t.Error("0.61 air changes passed")
	}
	if _, err := ventilation.FreeArea(1, 0); !errors.Is(err, ventilation.ErrLouver) {
		t.Error(err)
	}
}

func TestDuct(t *testing.T) {
	number := must[float64](t)
	last := 0.0
	for section := 0.001; section < 20; section *= 1.01 {
		a := number(ventilation.Duct(section))
		if a < last {
			t.Fatalf("%g m2: %g after %g", section, a, last)
		}
		last = a
	}
	for section, want := range map[float64]float64{0.005: 0, 0.01: 0.01, 0.03: 0.03, 0.05: 0.05, 1: 0.05, 7.5: 0.05, 15: 0.1} {
		near(t, "duct", number(ventilation.Duct(section)), want)
	}
}

func TestRanges(t *testing.T) {
	for _, watts := range []float64{69.9e3, 1.81e6, 0, math.NaN()} {
		if _, err := ventilation.Natural(watts, ventilation.RoomSealedInRoom, 0); err == nil {
			t.Errorf("%g W passed", watts)
		}
		if _, err := ventilation.Mechanical(watts, false, 0); err == nil {
			t.Errorf("%g W passed", watts)
		}
	}
	if _, err := ventilation.Natural(100e3, 0, 0); !errors.Is(err, ventilation.ErrCase) {
		t.Error(err)
	}
	if _, err := ventilation.Natural(100e3, ventilation.OpenFluedInRoom, 1.1); err == nil {
		t.Error("110 % summer use passed")
	}
	if _, err := ventilation.Small(70.1e3, ventilation.SmallRoom); err == nil {
		t.Error("the small table took 70.1 kW")
	}
	if a, err := ventilation.Small(5e3, ventilation.SmallRoom); err != nil || a.Low != 0 {
		t.Errorf("5 kW: %+v %v", a, err)
	}
	if _, err := ventilation.Small(5e3, 9); !errors.Is(err, ventilation.ErrCase) {
		t.Error(err)
	}
	if _, err := ventilation.Germany(40e3); err == nil {
		t.Error("40 kW passed")
	}
}

func TestNoAllocation(t *testing.T) {
	if n := testing.AllocsPerRun(100, func() {
		_, _ = ventilation.Natural(400e3, ventilation.OpenFluedInRoom, 0.8)
		_, _ = ventilation.Mechanical(400e3, false, 0)
		_, _ = ventilation.OpeningArea(1e6, ventilation.Direct)
	}); n != 0 {
		t.Errorf("%g allocations", n)
	}
}

func ExampleNatural() {
	a, err := ventilation.Natural(400e3, ventilation.OpenFluedInRoom, 0.8)
	fmt.Printf("high %.4g cm2, low %.4g cm2 %v\n", 1e4*a.High, 1e4*a.Low, err)
	// Output: high 1600 cm2, low 2400 cm2 <nil>
}

func ExampleMechanical() {
	f, err := ventilation.Mechanical(400e3, false, 0)
	fmt.Printf("inlet %.4g m3/h, extract %.4g m3/h %v\n", 3600*f.Inlet, 3600*f.Extract, err)
	// Output: inlet 1040 m3/h, extract 500 m3/h <nil>
}

func ExampleOpeningArea() {
	a, err := ventilation.OpeningArea(1515700, ventilation.Direct)
	fmt.Printf("%.3g in2 each %v\n", a, err)
	// Output: 379 in2 each <nil>
}

func ExampleKnownInfiltrationVolume() {
	v, err := ventilation.KnownInfiltrationVolume(150000, 0.40, true)
	fmt.Printf("%.4g ft3 %v\n", v, err)
	// Output: 5625 ft3 <nil>
}

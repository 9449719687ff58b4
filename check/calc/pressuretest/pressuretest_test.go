package pressuretest_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"example.org/tundish/check/calc/internal/reftable"
	"example.org/tundish/check/calc/pressuretest"
	"example.org/tundish/check/calc/within"
)

// TestWorked: 5 bar by the guidance on wholesome water: 7.5 and 8.25 bar.
func TestWorked(t *testing.T) {
	for _, row := range reftable.Read(t, "../../../testdata/worked/water.csv") {
		if row.Text("topic") != "pressure test" {
			continue
		}
		if row.Text("inputs") != "max operating 5 bar" || row.Text("expected") != "1.5x = 7.5 bar; 1.1x(1.5x) = 8.25 bar" {
			t.Fatalf("the worked row reads %q, %q", row.Text("inputs"), row.Text("expected"))
		}
		p, err := pressuretest.Water(5, pressuretest.Usual)
		if err != nil {
			t.Fatal(err)
		}
		row.Near("usual", p, 7.5, 1e-12)
		if p, err = pressuretest.Water(5, pressuretest.Usual*pressuretest.SupplyPeak); err != nil {
			t.Fatal(err)
		}
		row.Near("by the standard", p, 8.25, 1e-12)
		return
	}
	t.Fatal("the worked row is gone")
}

func TestFactors(t *testing.T) {
	for _, c := range []struct{ factor, want float64 }{{pressuretest.Usual, 4.5}, {pressuretest.EN14336, 3.9}} {
		if p, err := pressuretest.Water(3, c.factor); err != nil || math.Abs(p-c.want) > 1e-12 {
			t.Errorf("%g: %g, %v", c.factor, p, err)
		}
	}
	if pressuretest.SourceEN14336.Firm() || pressuretest.SourceHold.Firm() {
		t.Error("figures from memory or practice decide errors")
	}
}

func TestUSGas(t *testing.T) {
	for _, c := range []struct{ working, want float64 }{{0.5, 3}, {2, 3}, {2.01, 3.015}, {5, 7.5}} {
		if p, err := pressuretest.USGas(c.working); err != nil || math.Abs(p-c.want) > 1e-12 {
			t.Errorf("%g psi: %g, %v", c.working, p, err)
		}
	}
	for _, c := range []struct{ volume, want float64 }{
		{0, 10},
		{9.99, 10},
		{10, 30},
		{500, 30},
		{500.1, 60},
		{1000, 60},
		{24000, 1440},
		{1e6, 1440},
	} {
		if m, err := pressuretest.USGasTime(c.volume); err != nil || m != c.want {
			t.Errorf("%g ft3: %g min, %v", c.volume, m, err)
		}
	}
}

func TestOutOfRange(t *testing.T) {
	for name, f := range map[string]func() (float64, error){
		"no pressure": func() (float64, error) { return pressuretest.Water(0, 1.5) },
		"below 1":     func() (float64, error) { return pressuretest.Water(3, 0.9) },
		"nan":         func() (float64, error) { return pressuretest.Water(math.NaN(), 1.5) },
		"us pressure": func() (float64, error) { return pressuretest.USGas(200) },
		"us volume":   func() (float64, error) { return pressuretest.USGasTime(-1) },
	} {
		var out *within.Error
		if v, err := f(); !errors.As(err, &out) || v != 0 {
			t.Errorf("%s: %g, %v", name, v, err)
		}
	}
}

func TestNoAllocation(t *testing.T) {
	if n := testing.AllocsPerRun(100, func() {
		_, _ = pressuretest.Water(3, pressuretest.Usual)
		_, _ = pressuretest.USGasTime(700)
	}); n != 0 {
		t.Errorf("%g allocations per call", n)
	}
}

func ExampleWater() {
	p, err := pressuretest.Water(3, pressuretest.Usual)
	fmt.Printf("%.1f bar for %g min, %v\n", p, pressuretest.Hold/60, err)
	// Output: 4.5 bar for 60 min, <nil>
}

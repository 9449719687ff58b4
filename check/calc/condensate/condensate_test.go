package condensate_test

import (
	"fmt"
	"math"
	"testing"

	"example.org/tundish/check/calc/condensate"
)

func near(tb testing.TB, what string, got, want, tolerance float64) {
	tb.Helper()
	if !(math.Abs(got-want) <= tolerance*math.Abs(want)) {
		tb.Errorf("%s: got %.10g, want %.10g within %g", what, got, want, tolerance)
	}
}

// TestTrap: a seal of 75 mm serves 490 Pa, (75 - 25) x 9.81 by hand.
func TestTrap(t *testing.T) {
	p, err := condensate.HeldPressure(0.075)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "75 mm", p, 490.5, 1e-12)
	for _, seal := range []float64{0, 0.02, 0.025} {
		p, err := condensate.HeldPressure(seal)
		if err != nil || p != 0 {
			t.Errorf("%g m holds %g Pa, %v", seal, p, err)
		}
	}
	for _, pressure := range []float64{1, 200, 490.5, 5000} {
		seal, err := condensate.SealFor(pressure)
		if err != nil {
			t.Fatal(err)
		}
		back, err := condensate.HeldPressure(seal)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "round trip", back, pressure, 1e-9)
		suction, err := condensate.SealFor(-pressure)
		if err != nil || suction != seal {
			t.Errorf("suction of %g Pa: %g m, %v", pressure, suction, err)
		}
	}
	seal, err := condensate.SealFor(200)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "200 Pa, mm by hand", 1000*seal, 20.4+25, 1e-3)
	for _, bad := range []float64{-0.01, 1.1, math.NaN()} {
		if _, err := condensate.HeldPressure(bad); err == nil {
			t.Errorf("a seal of %g m passed", bad)
		}
	}
}

// TestDrain: half full, area and hydraulic radius of a circle are pi D2/8 and
// D/4; 40 mm at 45 mm/m is worked out from them by hand: 0.56 L/s.
func TestDrain(t *testing.T) {
	q, err := condensate.DrainCapacity(0.040, 0.045, 0.5)
	if err != nil {
		t.Fatal(err)
	}
	hand := math.Pi * 0.04 * 0.04 / 8 * math.Pow(0.01, 2.0/3) * math.Sqrt(0.045) / 0.011
	near(t, "half full", q, hand, 1e-12)
	near(t, "half full, L/s", 1000*q, 0.562, 2e-3)
	last := 0.0
	for depth := 0.05; depth <= 0.8; depth += 0.05 {
		q, err := condensate.DrainCapacity(0.040, 0.045, depth)
		if err != nil {
			t.Fatal(err)
		}
		if q <= last {
			t.Fatalf("depth %g: %g after %g", depth, q, last)
		}
		last = q
	}
	double, err := condensate.DrainCapacity(0.080, 0.045, 0.5)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "twice the bore", double/q, math.Pow(2, 8.0/3), 1e-12)
	steep, err := condensate.DrainCapacity(0.040, 0.18, 0.5)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "four times the fall", steep/q, 2, 1e-12)
	for _, fall := range []float64{0, -0.045, math.NaN()} {
		if _, err := condensate.DrainCapacity(0.040, fall, 0.5); err == nil {
			t.Errorf("a fall of %g passed", fall)
		}
	}
}

func TestLeastBore(t *testing.T) {
	for _, c := range []struct {
		watts float64
		units int
		place condensate.Place
		bore  float64
	}{
		{70e3, 1, condensate.Inside, 0.019},
		{70e3, 1, condensate.Outside, 0.030},
		{71e3, 1, condensate.Inside, 0.040},
		{60e3, 2, condensate.Inside, 0.040},
		{400e3, 4, condensate.Outside, 0.040},
	} {
		bore, source, err := condensate.LeastBore(c.watts, c.units, c.place)
		if err != nil || bore != c.bore || source.Work == "" {
			t.Errorf("%+v: %g m, %v", c, bore, err)
		}
	}
	if _, _, err := condensate.LeastBore(1e3, 0, condensate.Inside); err == nil {
		t.Error("no unit passed")
	}
}

func TestNeutralizer(t *testing.T) {
	for watts, want := range map[float64]condensate.Need{
		0: condensate.NotNeeded, 24.9e3: condensate.NotNeeded, 25e3: condensate.UnlessDiluted,
		200e3: condensate.UnlessDiluted, 200.1e3: condensate.AlwaysRequired, 800e3: condensate.AlwaysRequired,
	} {
		got, err := condensate.Neutralizer(watts)
		if err != nil || got != want {
			t.Errorf("%g W: %d, %v", watts, got, err)
		}
	}
	if _, err := condensate.Neutralizer(math.NaN()); err == nil {
		t.Error("no number passed")
	}
}

func ExampleHeldPressure() {
	p, err := condensate.HeldPressure(0.075)
	fmt.Printf("%.3g Pa %v\n", p, err)
	// Output: 490 Pa <nil>
}

func ExampleDrainCapacity() {
	q, err := condensate.DrainCapacity(0.040, 0.045, 0.5)
	fmt.Printf("%.3g L/min %v\n", 60000*q, err)
	// Output: 33.7 L/min <nil>
}

func ExampleNeutralizer() {
	need, err := condensate.Neutralizer(400e3)
	fmt.Println(need == condensate.AlwaysRequired, err)
	// Output: true <nil>
}

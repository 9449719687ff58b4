package stability_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"example.org/tundish/check/calc/stability"
	"example.org/tundish/check/calc/within"
)

func no(tb testing.TB, err error) {
	tb.Helper()
	if err != nil {
		tb.Fatal(err)
	}
}

func near(tb testing.TB, what string, got, want, tolerance float64) {
	tb.Helper()
	if !(math.Abs(got-want) <= tolerance*math.Abs(want)) {
		tb.Errorf("%s: %.9g, want %.9g", what, got, want)
	}
}

// TestTipWorked: four units of 95 kg and a frame of 140 kg at 450 mm inside the
// edge, worked by hand beside the rules. Units 250 mm inside: 12.7 degrees, 861 N
// at 1.8 m; units 50 mm outside: 3.6 degrees, 240 N. The height of the center,
// 1.35 m, is not stated there: it follows from the first angle and offset, so
// only the second angle proves the sum.
func TestTipWorked(t *testing.T) {
	for _, c := range []struct{ units, angle, force float64 }{{0.25, 12.7, 861}, {-0.05, 3.6, 240}} {
		f, err := stability.Sum([]stability.Mass{
			{Mass: 4 * 95, Offset: c.units, Height: 1.55},
			{Mass: 140, Offset: 0.45, Height: 0.8},
		})
		no(t, err)
		near(t, "mass", f.Mass, 520, 1e-12)
		angle, err := f.TipAngle()
		no(t, err)
		near(t, "angle", angle, c.angle, 0.004)
		force, err := f.TipForce(1.8)
		no(t, err)
		near(t, "force", force, c.force, 0.002)
	}
	f := stability.Frame{Mass: 500, Offset: -0.02, Height: 1.5}
	if angle, err := f.TipAngle(); err != nil || angle >= 0 {
		t.Errorf("center outside the feet: %g degrees, %v", angle, err)
	}
	if force, err := f.TipForce(1.8); err != nil || force >= 0 {
		t.Errorf("center outside the feet: %g N, %v", force, err)
	}
}

// TestOverturn: at the tip force the frame's factor is 1, and the parts' sum
// agrees with the force on the frame as one body.
func TestOverturn(t *testing.T) {
	parts := []stability.Mass{{Mass: 380, Offset: 0.25, Height: 1.55}, {Mass: 140, Offset: 0.45, Height: 0.8}}
	f, err := stability.Sum(parts)
	no(t, err)
	force, err := f.TipForce(1.8)
	no(t, err)
	factor, ok, err := stability.Overturn(parts, force, 1.8)
	no(t, err)
	if !ok {
		t.Fatal("nothing turns the frame")
	}
	near(t, "factor at the tip force", factor, 1, 1e-12)
	factor, _, err = stability.Overturn(parts, force/2, 1.8)
	no(t, err)
	near(t, "factor at half of it", factor, 2, 1e-12)
	// Units outside the feet: 63 kg.m against 19.
	parts[0].Offset = -0.05
	factor, ok, err = stability.Overturn(parts, 0, 0)
	no(t, err)
	near(t, "factor with units outside", factor, 63.0/19, 1e-12)
	if !ok {
		t.Error("the units turn the frame")
	}
	if _, ok, err := stability.Overturn(parts[1:], 0, 1); ok || err != nil {
		t.Errorf("nothing turns a bare frame: %v, %v", ok, err)
	}
}

// TestFloorWorked: six units of 95 kg with 12 l each, pipes, header water and
// frame, 1144 kg on 3.0 x 0.9 m: 4.2 kN/m2 (worked by hand beside the rules).
func TestFloorWorked(t *testing.T) {
	mass := 6*(95+12) + 180 + 250.0 + 72
	near(t, "mass", mass, 1144, 1e-12)
	q, err := stability.FloorLoad(mass, 3.0*0.9)
	no(t, err)
	near(t, "floor load", q, 4.2, 0.012)
}

func TestFeet(t *testing.T) {
	f := stability.Feet{Depth: 0.8, Width: 3}
	center, err := f.FootLoad(1144, 0.4, 1.5)
	no(t, err)
	near(t, "a quarter", center, 1144*stability.Gravity/4000, 1e-12)
	corner, err := f.FootLoad(1144, 0, 3)
	no(t, err)
	near(t, "all on one foot", corner, 1144*stability.Gravity/1000, 1e-12)
	front, err := f.FootLoad(1144, 0.2, 1.5)
	no(t, err)
	near(t, "three quarters of the weight in front", front, 1.5*center, 1e-12)
	mirrored, err := f.FootLoad(1144, 0.6, 1.5)
	no(t, err)
	near(t, "the same behind", mirrored, front, 1e-12)
}

// TestSumLaws: the center lies between its parts, scales with lengths and does
// not care for the unit of mass.
func TestSumLaws(t *testing.T) {
	parts := []stability.Mass{{10, 0.1, 0.2}, {30, 0.5, 1.6}, {5, -0.3, 0.9}}
	a, err := stability.Sum(parts)
	no(t, err)
	if a.Offset < -0.3 || a.Offset > 0.5 || a.Height < 0.2 || a.Height > 1.6 {
		t.Errorf("%+v", a)
	}
	for i := range parts {
		parts[i].Mass *= 7
		parts[i].Offset *= 2
		parts[i].Height *= 2
	}
	b, err := stability.Sum(parts)
	no(t, err)
	near(t, "offset", b.Offset, 2*a.Offset, 1e-12)
	near(t, "height", b.Height, 2*a.Height, 1e-12)
	angleA, _ := a.TipAngle()
	angleB, _ := b.TipAngle()
	near(t, "angle of a frame twice as large", angleB, angleA, 1e-12)
}

// TestLifts: 25 kg for men and 16 kg for women close in at the waist; two carry
// 33 kg, three 37.5 kg.
func TestLifts(t *testing.T) {
	men, err := stability.LiftGuide(stability.Elbow, false, false)
	no(t, err)
	women, err := stability.LiftGuide(stability.Elbow, false, true)
	no(t, err)
	if men != 25 || women != 16 {
		t.Errorf("%g and %g kg", men, women)
	}
	// At arm's length at elbow height the figure of L23 shows 15 and 10 kg.
	men15, err := stability.LiftGuide(stability.Elbow, true, false)
	no(t, err)
	women10, err := stability.LiftGuide(stability.Elbow, true, true)
	no(t, err)
	if men15 != 15 || women10 != 10 {
		t.Errorf("%g and %g kg at arm's length", men15, women10)
	}
	for people, want := range map[int]float64{1: 25, 2: 33.3, 3: 37.5} {
		got, err := stability.TeamLift(men, people)
		no(t, err)
		near(t, "team", got, want, 0.002)
	}
	for z := stability.Head; z <= stability.LowerLeg; z++ {
		for _, far := range []bool{false, true} {
			m, err := stability.LiftGuide(z, far, false)
			no(t, err)
			w, err := stability.LiftGuide(z, far, true)
			no(t, err)
			if w >= m || m > 25 {
				t.Errorf("zone %d: %g and %g kg", z, m, w)
			}
		}
	}
}

// TestNIOSH: reach 40, height 100, travel 50, fair grip: 11.5 kg (worked by hand
// beside the rules); the best lift is 23 kg.
func TestNIOSH(t *testing.T) {
	l := stability.Lift{Reach: 40, Height: 100, Travel: 50, Frequency: 1, Coupling: 0.95}
	w, err := l.RecommendedWeight()
	no(t, err)
	near(t, "recommended weight", w, 11.5, 0.002)
	best := stability.Lift{Reach: 25, Height: 75, Travel: 25, Frequency: 1, Coupling: 1}
	w, err = best.RecommendedWeight()
	no(t, err)
	near(t, "best lift", w, 23, 1e-12)
	best.Reach, best.Travel = 10, 5
	again, err := best.RecommendedWeight()
	no(t, err)
	near(t, "nearer than the body allows", again, w, 1e-12)
	for _, change := range []func(*stability.Lift){
		func(l *stability.Lift) { l.Reach += 5 },
		func(l *stability.Lift) { l.Height += 10 },
		func(l *stability.Lift) { l.Travel += 10 },
		func(l *stability.Lift) { l.Turn += 30 },
		func(l *stability.Lift) { l.Frequency = 0.8 },
		func(l *stability.Lift) { l.Coupling = 0.9 },
	} {
		worse := l
		change(&worse)
		a, _ := l.RecommendedWeight()
		b, err := worse.RecommendedWeight()
		no(t, err)
		if b >= a {
			t.Errorf("%+v allows %g kg, better than %g", worse, b, a)
		}
	}
}

func TestOutOfRange(t *testing.T) {
	nan := math.NaN()
	sum := func(m ...stability.Mass) func() (float64, error) {
		return func() (float64, error) { f, err := stability.Sum(m); return f.Mass, err }
	}
	f := stability.Frame{Mass: 500, Offset: 0.2, Height: 1.2}
	feet := stability.Feet{Depth: 0.8, Width: 3}
	for name, try := range map[string]func() (float64, error){
		"nothing":        sum(),
		"no mass":        sum(stability.Mass{0, 0.1, 1}),
		"mass below 0":   sum(stability.Mass{-1, 0.1, 1}),
		"offset":         sum(stability.Mass{1, nan, 1}),
		"height":         sum(stability.Mass{1, 0, 30}),
		"frame":          func() (float64, error) { return new(stability.Frame).TipAngle() },
		"force at floor": func() (float64, error) { return f.TipForce(0) },
		"overturn force": func() (float64, error) {
			v, _, err := stability.Overturn([]stability.Mass{{1, 1, 1}}, -1, 1)
			return v, err
		},
		"overturn height": func() (float64, error) {
			v, _, err := stability.Overturn([]stability.Mass{{1, 1, 1}}, 1, nan)
			return v, err
		},
		"overturn none": func() (float64, error) { v, _, err := stability.Overturn(nil, 1, 1); return v, err },
		"no area":       func() (float64, error) { return stability.FloorLoad(100, 0) },
		"floor mass":    func() (float64, error) { return stability.FloorLoad(nan, 1) },
		"outside feet":  func() (float64, error) { return feet.FootLoad(100, -0.1, 1) },
		"beside feet":   func() (float64, error) { return feet.FootLoad(100, 0.1, 3.1) },
		"no feet":       func() (float64, error) { return stability.Feet{}.FootLoad(100, 0, 0) },
		"no zone":       func() (float64, error) { return stability.LiftGuide(0, false, false) },
		"zone 6":        func() (float64, error) { return stability.LiftGuide(6, false, false) },
		"four people":   func() (float64, error) { return stability.TeamLift(25, 4) },
		"nobody":        func() (float64, error) { return stability.TeamLift(25, 0) },
		"no guideline":  func() (float64, error) { return stability.TeamLift(0, 2) },
		"niosh reach": func() (float64, error) {
			return (&stability.Lift{Reach: 70, Height: 75, Travel: 25, Frequency: 1, Coupling: 1}).RecommendedWeight()
		},
		"niosh grip": func() (float64, error) {
			return (&stability.Lift{Reach: 30, Height: 75, Travel: 25, Frequency: 1}).RecommendedWeight()
		},
		"niosh turn": func() (float64, error) {
			return (&stability.Lift{Reach: 30, Height: 75, Travel: 25, Turn: 140, Frequency: 1, Coupling: 1}).RecommendedWeight()
		},
	} {
		var out *within.Error
		if v, err := try(); !errors.As(err, &out) || v != 0 {
			t.Errorf("%s: %g, %v", name, v, err)
		}
	}
}

func TestNoAllocation(t *testing.T) {
	parts := []stability.Mass{{380, 0.25, 1.55}, {140, 0.45, 0.8}}
	if n := testing.AllocsPerRun(100, func() {
		f, _ := stability.Sum(parts)
		_, _ = f.TipAngle()
		_, _, _ = stability.Overturn(parts, 100, 1.8)
	}); n != 0 {
		t.Errorf("%g allocations per call", n)
	}
}

// Four units hung on one side before the frame is anchored.
func ExampleFrame_TipAngle() {
	f, err := stability.Sum([]stability.Mass{
		{Mass: 380, Offset: -0.05, Height: 1.55},
		{Mass: 140, Offset: 0.45, Height: 0.80},
	})
	angle, _ := f.TipAngle()
	force, _ := f.TipForce(1.8)
	fmt.Printf("%.1f degrees, %.0f N, %v\n", angle, force, err)
	// Output: 3.6 degrees, 240 N, <nil>
}

func ExampleLift_RecommendedWeight() {
	l := stability.Lift{Reach: 40, Height: 100, Travel: 50, Frequency: 1, Coupling: 0.95}
	w, err := l.RecommendedWeight()
	fmt.Printf("%.1f kg %v\n", w, err)
	// Output: 11.5 kg <nil>
}

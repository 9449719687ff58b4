package fittings_test

import (
	"errors"
	"math"
	"testing"

	"example.org/tundish/check/calc/fittings"
	"example.org/tundish/check/calc/within"
	"example.org/tundish/check/cite"
)

// TestTurbulentTable holds the smooth line against the table of fT that Crane
// prints by nominal size (from memory): it must round to the printed thousandth.
// Bores are those of schedule 40.
func TestTurbulentTable(t *testing.T) {
	for _, c := range []struct {
		size          string
		bore, printed float64
	}{
		{"1/2", 0.0158, 0.026},
		{"3/4", 0.0209, 0.024},
		{"1", 0.0266, 0.022},
		{"1 1/4", 0.0351, 0.021},
		{"1 1/2", 0.0409, 0.020},
		{"2", 0.0525, 0.019},
		{"2 1/2", 0.0627, 0.018},
		{"3", 0.0779, 0.017},
		{"4", 0.1023, 0.016},
		{"6", 0.1541, 0.015},
		{"8", 0.2027, 0.014},
	} {
		f, err := fittings.Turbulent(c.bore)
		no(t, err)
		if math.Abs(f-c.printed) > 0.0006 {
			t.Errorf("%s in: fT %.5f, printed %.3f", c.size, f, c.printed)
		}
	}
}

// TestMethodsAgree holds two methods against each other where they mean the
// same fitting.
func TestMethodsAgree(t *testing.T) {
	for _, bore := range []float64{0.0273, 0.0531, 0.0809, 0.1053} {
		crane, err := fittings.CraneElbow(bore, 90)
		no(t, err)
		three, ok := fittings.ThreeKNamed("elbow 90 threaded standard (r/D 1)")
		if !ok {
			t.Fatal("no elbow")
		}
		darby, err := three.K(1e6, bore/0.0254)
		no(t, err)
		near(t, "Darby's elbow against Crane's", darby, crane, 0.12)

		bend, err := fittings.CraneBend(bore, 1.5, 90)
		no(t, err)
		rennels, err := fittings.RennelsBendAt(1.5, 90, 1e6, 0.045e-3/bore)
		no(t, err)
		near(t, "Rennels' bend against Crane's", rennels, bend, 0.20)
	}
	for _, wide := range []float64{0.06, 0.08, 0.15} {
		sudden, err := fittings.CraneContraction(wide, 0.05)
		no(t, err)
		taper, err := fittings.CraneTaper(wide, 0.05, 180)
		no(t, err)
		near(t, "a taper of 180 degrees is a sudden contraction", taper, sudden, 1e-12)
		jump, err := fittings.Enlargement(0.05, wide)
		no(t, err)
		diffuser, err := fittings.CraneDiffuser(0.05, wide, 180)
		no(t, err)
		near(t, "a diffuser of 180 degrees is a sudden enlargement", diffuser, jump, 1e-12)
		rennels, err := fittings.RennelsContraction(wide, 0.05)
		no(t, err)
		rennelsTaper, err := fittings.RennelsTaper(wide, 0.05, 180, 0)
		no(t, err)
		near(t, "Rennels' taper of 180 degrees is sudden", rennelsTaper, rennels, 1e-12)
	}
}

// TestDiffuserJoins checks that the two formulas of Rennels meet at 20 degrees:
// a misremembered constant in either would part them.
func TestDiffuserJoins(t *testing.T) {
	for _, narrow := range []float64{0.03, 0.05, 0.08} {
		below, err := fittings.RennelsDiffuser(narrow, 0.1, 20, 0.02)
		no(t, err)
		above, err := fittings.RennelsDiffuser(narrow, 0.1, math.Nextafter(20, 21), 0.02)
		no(t, err)
		near(t, "K across 20 degrees", above, below, 0.005)
	}
}

func TestShapes(t *testing.T) {
	last := 1.0
	for r := 0.0; r <= 1; r += 0.01 {
		for _, f := range []func(float64) (float64, error){fittings.CraneEntrance, fittings.RennelsEntrance, fittings.SwameeEntrance} {
			if k, err := f(r); err != nil || k <= 0 || k > 0.58 {
				t.Fatalf("entrance at %g: %g, %v", r, k, err)
			}
		}
		k, _ := fittings.RennelsEntrance(r)
		if k > last {
			t.Errorf("a rounder entrance loses more: %g at %g", k, r)
		}
		last = k
	}
	for i, f := range []func(float64) (float64, error){
		fittings.RennelsMiter,
		func(a float64) (float64, error) { return fittings.CraneMiter(0.1, a) },
		func(a float64) (float64, error) { return fittings.BlevinsMiter(a, 1e5) },
		func(a float64) (float64, error) { return fittings.SwameeBend(1.5, a) },
		func(a float64) (float64, error) { return fittings.RennelsBend(1.5, a, 0.02) },
	} {
		last := -1.0
		for a := 0.0; a <= 90; a += 2.5 {
			k, err := f(a)
			no(t, err)
			if k <= last {
				t.Errorf("method %d: K does not rise at %g degrees", i, a)
			}
			last = k
		}
	}
	for beta := 0.1; beta < 1; beta += 0.05 {
		for _, f := range []func(float64, float64) (float64, error){
			func(n, w float64) (float64, error) { return fittings.CraneContraction(w, n) },
			func(n, w float64) (float64, error) { return fittings.RennelsContraction(w, n) },
			fittings.Enlargement,
		} {
			a, err := f(0.1*beta, 0.1)
			no(t, err)
			b, err := f(0.1*(beta+0.04), 0.1)
			no(t, err)
			if b >= a {
				t.Errorf("a smaller step at %g loses more", beta)
			}
		}
	}
}

// TestTeeBalance: with no flow in the branch the run loses nothing, and a
// diverging branch at right angles takes one velocity head.
func TestTeeBalance(t *testing.T) {
	for _, angle := range []float64{30, 45, 60, 90} {
		tee := fittings.Tee{Run: 0.1, Branch: 0.1, Angle: angle}
		for _, f := range []func(float64, float64) (float64, error){tee.ConvergingRun, tee.DivergingRun} {
			k, err := f(1, 0)
			no(t, err)
			if k != 0 {
				t.Errorf("%g degrees: the run loses %g with a dead branch", angle, k)
			}
		}
	}
	k, err := fittings.Tee{Run: 0.1, Branch: 0.1, Angle: 90}.DivergingBranch(1, 0)
	no(t, err)
	near(t, "dead branch", k, 1, 1e-12)
	// The band of dispute opens above 2/3 and closes above sqrt(2/3).
	for beta, want := range map[float64]error{0.6666: nil, 0.667: fittings.ErrTeeDisputed, 0.816: fittings.ErrTeeDisputed, 0.817: nil} {
		if _, err := (fittings.Tee{Run: 0.1, Branch: 0.1 * beta, Angle: 90}).DivergingBranch(1, 1); err != want {
			t.Errorf("branch over run %g: %v", beta, err)
		}
	}
}

func TestConversions(t *testing.T) {
	for _, kv := range []float64{0.1, 1, 6.3, 400} {
		cv, err := fittings.KvToCv(kv)
		no(t, err)
		back, err := fittings.CvToKv(cv)
		no(t, err)
		near(t, "Kv to Cv and back", back, kv, 1e-14)
		k, err := fittings.KvToK(kv, 0.05)
		no(t, err)
		// dp = 1 bar at Kv m3/h of water of 1000 kg/m3, by the velocity head.
		v := kv / 3600 / (math.Pi / 4 * 0.05 * 0.05)
		near(t, "K of a part that loses 1 bar at Kv", k*1000*v*v/2, 1e5, 0.001)
	}
	// Printed: Kv = 0.865 Cv.
	kv, err := fittings.CvToKv(1)
	no(t, err)
	near(t, "Kv of Cv 1", kv, 0.865, 1e-4)
}

func TestSimpleTable(t *testing.T) {
	rows := fittings.Simples()
	for i := range rows {
		s := &rows[i]
		if found, ok := fittings.SimpleOf(s.Part); !ok || found.Name != s.Name {
			t.Errorf("%s stands in a wrong place", s.Name)
		}
		if s.Source.Work == "" || s.Source.Read == "" || s.Source.Read == cite.Published {
			t.Errorf("%s: source %v", s.Name, s.Source)
		}
		small, err := s.K(0.02)
		no(t, err)
		large, err := s.K(0.1)
		no(t, err)
		if small < large || large <= 0 {
			t.Errorf("%s: K %g at 20 mm, %g at 100 mm", s.Name, small, large)
		}
		if _, err := s.K(0.3); err == nil {
			t.Errorf("%s: a bore of 300 mm passes", s.Name)
		}
	}
	if _, ok := fittings.SimpleOf(0); ok {
		t.Error("part 0 is found")
	}
	if _, ok := fittings.SimpleOf(fittings.Part(len(rows) + 1)); ok {
		t.Error("a part beyond the table is found")
	}
	// The usual tables (from memory): elbow 0.5 to 0.9, tee through 0.2 rising to
	// 0.5 in small sizes, branch 1.0 to 1.5.
	for part, band := range map[fittings.Part][2]float64{fittings.Bend: {0.5, 0.9}, fittings.TeeRun: {0.2, 0.5}, fittings.TeeBranch: {0.9, 1.5}} {
		s, _ := fittings.SimpleOf(part)
		for _, bore := range []float64{0.0217, 0.0273, 0.0531, 0.0809} {
			if k, err := s.K(bore); err != nil || k < band[0] || k > band[1] {
				t.Errorf("%s at %g m: K %g, %v", s.Name, bore, k, err)
			}
		}
	}
}

func TestCopperLengths(t *testing.T) {
	for _, c := range fittings.CopperLengths() {
		l, err := fittings.CopperFitting(c.Outside, c.Fitting)
		no(t, err)
		if l != c.Length || c.Source.Firm() {
			t.Errorf("%d mm %s: %g, %v", c.Outside, c.Fitting, l, c.Source)
		}
	}
	if _, err := fittings.CopperFitting(28, fittings.CopperBend); err == nil {
		t.Error("28 mm is not in the table and passes")
	}
}

func TestOutOfRange(t *testing.T) {
	nan := math.NaN()
	tee := fittings.Tee{Run: 0.1, Branch: 0.1, Angle: 90}
	two, _ := fittings.TwoKNamed("tee run screwed")
	three, _ := fittings.ThreeKNamed("valve check swing")
	for name, f := range map[string]func() (float64, error){
		"bore 0":               func() (float64, error) { return fittings.Turbulent(0) },
		"bore nan":             func() (float64, error) { return fittings.Turbulent(nan) },
		"valve 0":              func() (float64, error) { return fittings.CraneValve(0, 0.05) },
		"valve 200":            func() (float64, error) { return fittings.CraneValve(200, 0.05) },
		"butterfly DN25":       func() (float64, error) { return fittings.CraneButterfly(0.027) },
		"reduced globe":        func() (float64, error) { return fittings.CraneReducedValve(fittings.Globe, 0.04, 0.05, 30) },
		"seat over pipe":       func() (float64, error) { return fittings.CraneReducedValve(fittings.Gate, 0.06, 0.05, 30) },
		"elbow 60":             func() (float64, error) { return fittings.CraneElbow(0.05, 60) },
		"bend radius":          func() (float64, error) { return fittings.CraneBend(0.05, 0.5, 90) },
		"bend angle":           func() (float64, error) { return fittings.CraneBend(0.05, 1, 10) },
		"rennels factor":       func() (float64, error) { return fittings.RennelsBend(1, 90, 0.2) },
		"rennels Re":           func() (float64, error) { return fittings.RennelsBendAt(1, 90, 3000, 0) },
		"ito angle":            func() (float64, error) { return fittings.ItoBend(1, 60, 1e5) },
		"ito laminar":          func() (float64, error) { return fittings.ItoBend(10, 90, 1e4) },
		"swamee":               func() (float64, error) { return fittings.SwameeBend(1, 200) },
		"miter 91":             func() (float64, error) { return fittings.RennelsMiter(91) },
		"miter Re":             func() (float64, error) { return fittings.BlevinsMiter(45, 100) },
		"tee of no flow":       func() (float64, error) { return tee.DivergingRun(0, 0) },
		"tee against the flow": func() (float64, error) { return tee.DivergingRun(-1, 2) },
		"tee at 75":            func() (float64, error) { return fittings.Tee{Run: 0.1, Branch: 0.1, Angle: 75}.ConvergingRun(1, 1) },
		"tee branch too big":   func() (float64, error) { return fittings.Tee{Run: 0.1, Branch: 0.2, Angle: 90}.ConvergingRun(1, 1) },
		"entrance":             func() (float64, error) { return fittings.CraneEntrance(-0.1) },
		"inward":               func() (float64, error) { return fittings.RennelsInward(2) },
		"step the wrong way":   func() (float64, error) { return fittings.Enlargement(0.1, 0.05) },
		"diffuser 90":          func() (float64, error) { return fittings.RennelsDiffuser(0.05, 0.1, 90, 0.02) },
		"taper 0":              func() (float64, error) { return fittings.RennelsTaper(0.1, 0.05, 0, 0.02) },
		"2K":                   func() (float64, error) { return two.K(0, 2) },
		"3K":                   func() (float64, error) { return three.K(1e5, 0) },
		"Kv 0":                 func() (float64, error) { return fittings.KvToCv(0) },
		"K of Kv 0":            func() (float64, error) { return fittings.KvToK(0, 0.05) },
		"Cv nan":               func() (float64, error) { return fittings.CvToKv(nan) },
	} {
		var out *within.Error
		if k, err := f(); !errors.As(err, &out) || k != 0 {
			t.Errorf("%s: %g, %v", name, k, err)
		}
	}
}

func TestNoAllocation(t *testing.T) {
	tee := fittings.Tee{Run: 0.1, Branch: 0.05, Angle: 45}
	if n := testing.AllocsPerRun(100, func() {
		s, _ := fittings.SimpleOf(fittings.Bend)
		k, _ := s.K(0.05)
		q, _ := tee.DivergingBranch(k, 1)
		two, _ := fittings.TwoKNamed("valve check swing")
		_, _ = two.K(1e5, q+2)
		_, _ = fittings.CraneBend(0.05, 1.7, 60)
	}); n != 0 {
		t.Errorf("%g allocations per call", n)
	}
}

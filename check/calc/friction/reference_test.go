package friction

import (
	"testing"

	"example.org/tundish/check/calc/internal/reftable"
)

// Reference: testdata/reference/friction_factor.csv, Colebrook in 40 digits and
// 64/Re, by the library named in its head.
func TestReferenceTable(t *testing.T) {
	n := 0
	for _, r := range reftable.Read(t, "../../../testdata/reference/friction_factor.csv") {
		re, eps := r.Num("Re"), r.Num("eD")
		f, err := Factor(re, eps)
		if err != nil {
			t.Fatal(err)
		}
		switch {
		case re <= Laminar:
			r.Near("laminar factor", f, r.Num("f_laminar"), 1e-9)
		case re >= Turbulent:
			r.Near("turbulent factor", f, r.Num("f_colebrook_exact"), 1e-9)
		default:
			continue
		}
		n++
	}
	if n < 50 {
		t.Errorf("only %d rows compared", n)
	}
}

func TestBridgeIsContinuous(t *testing.T) {
	for _, eps := range []float64{0, 1e-4, 0.01, 0.05} {
		last := Of(1990, eps)
		for re := 1991.0; re < 4100; re++ {
			f := Of(re, eps)
			if d := f - last; d > 1e-3 || d < -1e-3 {
				t.Fatalf("jump at Re %g: %g to %g", re, last, f)
			}
			last = f
		}
	}
}

func TestRange(t *testing.T) {
	for _, c := range [][2]float64{{0, 0}, {-1, 0}, {1e10, 0}, {1e5, -1}, {1e5, 0.2}} {
		if _, err := Factor(c[0], c[1]); err == nil {
			t.Errorf("Factor(%v) has no error", c)
		}
	}
}

func BenchmarkColebrook(b *testing.B) {
	for b.Loop() {
		Colebrook(1e5, 1e-3)
	}
}

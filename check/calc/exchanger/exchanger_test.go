package exchanger

import (
	"math"
	"testing"

	"example.org/tundish/check/calc/internal/reftable"
)

// Reference: testdata/reference/hx.csv, first principles cross-checked with a
// general-purpose library named in its head.
func TestReferenceTable(t *testing.T) {
	for _, r := range reftable.Read(t, "../../../testdata/reference/hx.csv") {
		hot := Side{r.Num("m_h_kg_s"), r.Num("cp_h_kJ_kgK") * 1000, r.Num("t_h_in")}
		cold := Side{r.Num("m_c_kg_s"), r.Num("cp_c_kJ_kgK") * 1000, r.Num("t_c_in")}
		got, err := CounterFlow(hot, cold, r.Num("UA_W_K"))
		if err != nil {
			t.Fatal(err)
		}
		r.Near("effectiveness", got.Effectiveness, r.Num("eff"), 1e-9)
		r.Near("duty", got.Duty/1000, r.Num("Q_kW"), 1e-9)
		r.Near("hot outlet", got.HotOutlet, r.Num("t_h_out"), 1e-9)
		r.Near("cold outlet", got.ColdOutlet, r.Num("t_c_out"), 1e-9)
		r.Near("mean difference", got.Mean, r.Num("LMTD_K"), 1e-9)
		// The two ways to the mean difference agree.
		d1, d2 := hot.Inlet-got.ColdOutlet, got.HotOutlet-cold.Inlet
		if m, err := MeanDifference(d1, d2); err == nil {
			r.Near("mean difference of the ends", m, got.Mean, 1e-6)
		}
	}
}

// Near equal rates the form does not cancel: both sides of the border agree.
func TestNearlyEqualRates(t *testing.T) {
	for _, ntu := range []float64{0.1, 1, 8, 40} {
		a, _ := Effectiveness(ntu, 1)
		b, _ := Effectiveness(ntu, 1-1e-11)
		c, _ := Effectiveness(ntu, 1-1e-7)
		if math.Abs(a-b) > 1e-9 || math.Abs(a-c) > 1e-5 {
			t.Errorf("NTU %g: %.12g, %.12g, %.12g", ntu, a, b, c)
		}
	}
}

// More surface never lowers the duty, and no more heat passes than the weaker
// stream can carry.
func TestProperties(t *testing.T) {
	hot, cold := Side{2, 4190, 80}, Side{3, 4190, 50}
	last := 0.0
	for ua := 500.0; ua < 5e5; ua *= 1.4 {
		r, err := CounterFlow(hot, cold, ua)
		if err != nil {
			t.Fatal(err)
		}
		if r.Duty < last || r.Duty > 2*4190*30*(1+1e-12) {
			t.Fatalf("UA %g: %g W after %g W", ua, r.Duty, last)
		}
		if d := math.Abs(2*4190*(80-r.HotOutlet) - 3*4190*(r.ColdOutlet-50)); d > 1e-6*r.Duty {
			t.Errorf("UA %g: the two sides differ by %g W", ua, d)
		}
		last = r.Duty
	}
}

func TestRefused(t *testing.T) {
	ok := Side{1, 4190, 80}
	for _, c := range []struct {
		hot, cold Side
		ua        float64
	}{
		{Side{0, 4190, 80}, Side{1, 4190, 50}, 1000},
		{ok, Side{1, -1, 50}, 1000},
		{ok, Side{1, 4190, 90}, 1000},
		{ok, Side{1, 4190, 50}, 0},
		{ok, Side{1, 4190, math.NaN()}, 1000},
	} {
		if _, err := CounterFlow(c.hot, c.cold, c.ua); err == nil {
			t.Errorf("no error for %+v", c)
		}
	}
}

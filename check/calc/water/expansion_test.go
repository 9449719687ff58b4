package water

import (
	"math"
	"testing"

	"example.org/tundish/check/calc/internal/reftable"
)

// Reference: testdata/reference/expansion.csv, IAPWS-IF97 by an independent
// library named in its head.
func TestExpansionTable(t *testing.T) {
	for _, r := range reftable.Read(t, "../../../testdata/reference/expansion.csv") {
		e, err := Expansion(r.Num("t_cold_degC"), r.Num("t_hot_degC"), r.Num("p_cold_bar_abs")*1e5, r.Num("p_hot_bar_abs")*1e5)
		if err != nil {
			t.Fatal(err)
		}
		if d := math.Abs(e - r.Num("e_cold")); d > 3e-5 {
			t.Errorf("expansion %g, the table has %g", e, r.Num("e_cold"))
		}
	}
}

func TestExpansionRefused(t *testing.T) {
	if _, err := Expansion(60, 20, 1e5, 1e5); err == nil {
		t.Error("no error for water that cools")
	}
}

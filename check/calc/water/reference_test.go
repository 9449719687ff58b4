package water

import (
	"testing"

	"example.org/tundish/check/calc/internal/reftable"
)

// Reference: testdata/reference/water_properties.csv, IAPWS-IF97 and R12-08 by
// an independent library named in its head.
func TestReferenceTable(t *testing.T) {
	for _, r := range reftable.Read(t, "../../../testdata/reference/water_properties.csv") {
		s, err := At(r.Num("t_degC"), r.Num("p_bar_abs")*1e5)
		if err != nil {
			t.Fatal(err)
		}
		r.Near("density", s.Density, r.Num("rho_kg_m3"), 1e-8)
		r.Near("viscosity", s.Viscosity, r.Num("mu_Pas"), 1e-6)
		r.Near("specific heat", s.SpecificHeat/1000, r.Num("cp_kJ_kgK"), 1e-8)
		r.Near("enthalpy", s.Enthalpy/1000, r.Num("h_kJ_kg"), 1e-6)
	}
}

// IF97 table 5, check point T = 300 K, p = 3 MPa.
func TestCheckPoint(t *testing.T) {
	s, err := At(300-zeroCelsius, 3e6)
	if err != nil {
		t.Fatal(err)
	}
	if v := 1 / s.Density; v < 0.1002151679e-2 || v > 0.1002151681e-2 {
		t.Errorf("v = %.10g, IF97 prints 0.100215168e-2", v)
	}
	if s.SpecificHeat < 4173.01217 || s.SpecificHeat > 4173.01219 {
		t.Errorf("cp = %.10g, IF97 prints 4.17301218", s.SpecificHeat)
	}
}

func TestRange(t *testing.T) {
	for _, c := range [][2]float64{{-1, 1e5}, {201, 1e5}, {20, 0}, {20, 2e7}} {
		if _, err := At(c[0], c[1]); err == nil {
			t.Errorf("At(%v) has no error", c)
		}
	}
}

func BenchmarkAt(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := At(65, 3e5); err != nil {
			b.Fatal(err)
		}
	}
}

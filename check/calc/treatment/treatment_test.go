package treatment_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"example.org/tundish/check/calc/internal/reftable"
	"example.org/tundish/check/calc/treatment"
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

func workedRow(tb testing.TB, topic, expected string) {
	tb.Helper()
	for _, row := range reftable.Read(tb, "../../../testdata/worked/water.csv") {
		if row.Text("topic") == topic {
			if row.Text("expected") != expected {
				tb.Fatalf("%s: the worked row reads %q", topic, row.Text("expected"))
			}
			return
		}
	}
	tb.Fatalf("no worked row %q", topic)
}

// TestGermanWorked: the example of a public manual by VDI 2035-1 of 2005: 800 l,
// 20 kW, mains of 18 German degrees.
func TestGermanWorked(t *testing.T) {
	workedRow(t, "fill-water hardness band and part-demineralisation", "40 l/kW; demineralise 38 %; 304 l")
	perKW, err := treatment.PerKW(800, 20)
	no(t, err)
	near(t, "l/kW", perKW, 40, 1e-12)
	limit, source, err := treatment.Limit(treatment.VDI2005, 20, perKW)
	no(t, err)
	near(t, "limit in German degrees", limit*treatment.GermanDegrees, 11.2, 1e-12)
	if !source.Firm() {
		t.Error("the 2005 table was read in print")
	}
	share, err := treatment.PartDemineralized(18/treatment.GermanDegrees, limit)
	no(t, err)
	if math.Round(100*share) != 38 {
		t.Errorf("%.2f %%", 100*share)
	}
	near(t, "liters", 800*math.Round(100*share)/100, 304, 1e-12)
}

// TestAustrianWorked: the example of a public manual by OENORM H 5195-1: 45 kW,
// 1000 l.
func TestAustrianWorked(t *testing.T) {
	workedRow(t, "fill-water hardness band (Austria)", "22.2 l/kW; limit 5.6 degdH")
	perKW, err := treatment.PerKW(1000, 45)
	no(t, err)
	near(t, "l/kW", perKW, 22.2, 0.002)
	limit, _, err := treatment.Limit(treatment.ONorm, 45, perKW)
	no(t, err)
	near(t, "limit in German degrees", limit*treatment.GermanDegrees, 5.6, 1e-12)
}

// TestLimitsTable: every cell as printed, in mol/m3 or German degrees, with its
// bounds: 20 l/kW and 50 kW belong to the smaller side.
func TestLimitsTable(t *testing.T) {
	for _, c := range []struct {
		edition treatment.Edition
		second  float64
		unit    float64
		cells   [4][3]float64
	}{
		{treatment.VDI2021, 40, 1, [4][3]float64{{3, 1.5, 0.05}, {2, 1, 0.05}, {1.5, 0.05, 0.05}, {0.05, 0.05, 0.05}}},
		{treatment.VDI2005, 50, 1, [4][3]float64{{3, 2, 0.02}, {2, 1.5, 0.02}, {1.5, 0.02, 0.02}, {0.02, 0.02, 0.02}}},
		{treatment.ONorm, 50, 5.6, [4][3]float64{{11.2, 5.6, 0.6}, {5.6, 2.8, 0.6}, {2.8, 0.6, 0.6}, {0.6, 0.6, 0.6}}},
	} {
		for i, kW := range []float64{50, 200, 600, 1200} {
			for j, content := range []float64{20, c.second, c.second + 1} {
				for _, at := range []float64{kW, kW * 0.95} {
					got, _, err := treatment.Limit(c.edition, at, content)
					no(t, err)
					near(t, fmt.Sprintf("table %d, %g kW, %g l/kW", c.edition, at, content), got*c.unit, c.cells[i][j], 1e-12)
				}
				if i < 3 {
					got, _, err := treatment.Limit(c.edition, kW+0.1, content)
					no(t, err)
					near(t, "over the row", got*c.unit, c.cells[i+1][j], 1e-12)
				}
			}
		}
	}
	if _, s, err := treatment.Limit(treatment.VDI2021, 320, 37); err != nil || s.Firm() {
		t.Errorf("the 2021 table is from memory: %v, %v", s, err)
	}
	// VDI 2035-1 prints both units: 3.0 (16.8), 2.0 (11.2), 1.5 (8.4).
	for molar, german := range map[float64]float64{3: 16.8, 2: 11.2, 1.5: 8.4} {
		near(t, "German degrees", molar*treatment.GermanDegrees, german, 1e-12)
	}
}

func TestPart(t *testing.T) {
	// 14 German degrees to 0.3: 98.6 % (worked beside the rules).
	share, err := treatment.PartDemineralized(14/treatment.GermanDegrees, 0.3/treatment.GermanDegrees)
	no(t, err)
	near(t, "share", share, 0.986, 0.001)
	for most := 0.02; most < 4; most += 0.1 {
		share, err := treatment.PartDemineralized(4, most)
		no(t, err)
		// The blend comes out at the limit.
		blend := share*0.1/treatment.GermanDegrees + (1-share)*4
		near(t, "hardness of the blend", blend, most, 1e-9)
	}
	if share, err := treatment.PartDemineralized(1, 1); err != nil || share != 0 {
		t.Errorf("soft water: %g, %v", share, err)
	}
	// 3 m3 at 3 mol/m3 leave 900 g.
	kg, err := treatment.Scale(3, 3)
	no(t, err)
	near(t, "scale", kg, 0.9, 1e-12)
}

// TestDegrees: the usual table of conversions: 1 German degree is 1.25 English
// and 1.78 French degrees and 17.8 mg/l CaCO3; 1 grain in a gallon 17.1 mg/l.
func TestDegrees(t *testing.T) {
	near(t, "French by German", treatment.FrenchDegrees/treatment.GermanDegrees, 1.78, 0.005)
	near(t, "English by German", treatment.EnglishDegrees/treatment.GermanDegrees, 1.25, 0.005)
	near(t, "mg/l by German", treatment.MgLiterCaCO3/treatment.GermanDegrees, 17.8, 0.005)
	near(t, "mg/l by grain", treatment.MgLiterCaCO3/treatment.GrainsInGallon, 17.1, 0.002)
}

func TestBands(t *testing.T) {
	if low, high := treatment.Acidity(true); low != 8.2 || high != 9 {
		t.Error(low, high)
	}
	if low, high := treatment.Acidity(false); low != 8.2 || high != 10 {
		t.Error(low, high)
	}
	if low, high := treatment.Conductivity(true); low != 10 || high != 100 {
		t.Error(low, high)
	}
	if low, high := treatment.Conductivity(false); low != 10 || high != 1500 {
		t.Error(low, high)
	}
	if treatment.SourceAcidity.Firm() || treatment.SourceChloride.Firm() || treatment.SourceTopUpYear.Firm() {
		t.Error("bands from memory or practice decide errors")
	}
	u, err := treatment.TopUpOf(2000, 2000, 3000, 250)
	no(t, err)
	if u.Total != 2.5 || u.Year != 0.125 || u.Total > treatment.TotalMost || u.Year <= treatment.YearMost {
		t.Errorf("%+v", u)
	}
}

func TestOutOfRange(t *testing.T) {
	nan := math.NaN()
	for name, f := range map[string]func() (float64, error){
		"table 0":    func() (float64, error) { v, _, err := treatment.Limit(0, 100, 10); return v, err },
		"table 9":    func() (float64, error) { v, _, err := treatment.Limit(9, 100, 10); return v, err },
		"no output":  func() (float64, error) { v, _, err := treatment.Limit(treatment.VDI2021, 0, 10); return v, err },
		"no content": func() (float64, error) { v, _, err := treatment.Limit(treatment.VDI2021, 100, nan); return v, err },
		"no unit":    func() (float64, error) { return treatment.PerKW(1000, 0) },
		"no water":   func() (float64, error) { return treatment.PerKW(nan, 50) },
		"mains":      func() (float64, error) { return treatment.PartDemineralized(-1, 1) },
		"too pure":   func() (float64, error) { return treatment.PartDemineralized(3, 0.01) },
		"scale":      func() (float64, error) { return treatment.Scale(1, 30) },
		"volume":     func() (float64, error) { return treatment.Scale(-1, 3) },
		"top-up":     func() (float64, error) { u, err := treatment.TopUpOf(0, 0, 0, 0); return u.Total, err },
		"top-up nan": func() (float64, error) { u, err := treatment.TopUpOf(1000, 1000, nan, 0); return u.Total, err },
		"fill":       func() (float64, error) { u, err := treatment.TopUpOf(1000, -1, 0, 0); return u.Total, err },
		"year":       func() (float64, error) { u, err := treatment.TopUpOf(1000, 1, 0, -1); return u.Total, err },
	} {
		var out *within.Error
		if v, err := f(); !errors.As(err, &out) || v != 0 {
			t.Errorf("%s: %g, %v", name, v, err)
		}
	}
}

func TestNoAllocation(t *testing.T) {
	if n := testing.AllocsPerRun(100, func() {
		limit, _, _ := treatment.Limit(treatment.VDI2021, 320, 37)
		_, _ = treatment.PartDemineralized(2.5, limit)
	}); n != 0 {
		t.Errorf("%g allocations per call", n)
	}
}

// A plant of 320 kW with 2980 l on units of 80 kW, mains of 14 German degrees.
func ExampleLimit() {
	perKW, _ := treatment.PerKW(2980, 80)
	limit, source, err := treatment.Limit(treatment.VDI2021, 320, perKW)
	fmt.Printf("%.1f l/kW: %.2f mol/m3, %s, %s, %v\n", perKW, limit, source, source.Read, err)
	share, err := treatment.PartDemineralized(14/treatment.GermanDegrees, limit)
	fmt.Printf("%.1f %% %v\n", 100*share, err)
	// Output:
	// 37.2 l/kW: 0.05 mol/m3, VDI 2035-1:2021, table of fill water, from memory, <nil>
	// 98.7 % <nil>
}

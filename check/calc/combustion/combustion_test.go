package combustion_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"example.org/tundish/check/calc/combustion"
)

const kWh = 3.6e6

func near(tb testing.TB, what string, got, want, tolerance float64) {
	tb.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		tb.Errorf("%s: got %.8g, want %.8g within %g", what, got, want, tolerance)
	}
}

func burn(tb testing.TB, f *combustion.Fuel, co2 float64) combustion.Products {
	tb.Helper()
	p, err := combustion.Burn(f, co2, 0)
	if err != nil {
		tb.Fatal(err)
	}
	return p
}

func dewPoint(tb testing.TB, p combustion.Products) float64 {
	tb.Helper()
	t, err := p.DewPoint(101325)
	if err != nil {
		tb.Fatal(err)
	}
	return t
}

// TestSaturation compares with reference/water_properties.csv, column
// psat_kPa (IAPWS-IF97), to 1e-6, and goes back.
func TestSaturation(t *testing.T) {
	text, err := os.ReadFile("../../../testdata/reference/water_properties.csv")
	if err != nil {
		t.Fatal(err)
	}
	r := csv.NewReader(strings.NewReader(string(text)))
	r.Comment = '#'
	r.FieldsPerRecord = -1
	r.LazyQuotes = true
	records, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	seen := 0
	for _, rec := range records[1:] {
		celsius, err := strconv.ParseFloat(rec[0], 64)
		if err != nil {
			t.Fatal(err)
		}
		want, err := strconv.ParseFloat(rec[7], 64)
		if err != nil {
			t.Fatal(err)
		}
		got, err := combustion.SaturationPressure(celsius)
		if err != nil {
			t.Fatal(err)
		}
		near(t, rec[0]+" degC", got, 1000*want, 1e-6*1000*want)
		back, err := combustion.SaturationTemperature(got)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "back to "+rec[0], back, celsius, 1e-6)
		seen++
	}
	if seen < 50 || records[0][7] != "psat_kPa" {
		t.Errorf("%d rows of %s", seen, records[0][7])
	}
	for _, bad := range []float64{-1, 371, math.NaN()} {
		if _, err := combustion.SaturationPressure(bad); err == nil {
			t.Errorf("%g degC passed", bad)
		}
	}
	if _, err := combustion.SaturationTemperature(600); err == nil {
		t.Error("600 Pa passed")
	}
}

// TestWorkedDewPoint holds the two rows "flue gas dew point" of
// worked/gas-flue-air.csv: Cengel & Boles, Thermodynamics, Example 15-3 (text
// read, answer from memory), and a published sample calculation.
func TestWorkedDewPoint(t *testing.T) {
	// 72 % CH4, 9 % H2, 14 % N2, 2 % O2, 3 % CO2; heats play no part.
	mixed := combustion.Fuel{
		Name: "mixture", Carbon: 0.75, Water: 1.53, Oxygen: 1.44 + 0.045 - 0.02, Inert: 0.14,
		MolarMass: 0.018, Net: 6e5, Gross: 6.6e5,
	}
	vapor, err := combustion.VaporOfAir(20, 0.8, 101325)
	if err != nil {
		t.Fatal(err)
	}
	p, err := combustion.Burn(&mixed, mixed.MostCO2(), vapor)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "Cengel & Boles", dewPoint(t, p), 60.9, 0.3)
	sample := dewPoint(t, burn(t, &combustion.Methane, 9.15))
	near(t, "sample calculation, degF", sample*1.8+32, 131.4, 1.0)
}

// TestWorkedCondensate holds row "theoretical condensate": a published
// training article, about 1.6 kg per m3 of natural gas at 0 degC.
func TestWorkedCondensate(t *testing.T) {
	p := burn(t, &combustion.Methane, 9)
	perMole := p.MostCondensate() * p.Net
	near(t, "per m3", perMole/0.0224140, 1.6, 0.016)
}

// TestHandFigures compares with figures worked out by hand from the same
// balance of atoms.
func TestHandFigures(t *testing.T) {
	near(t, "CO2max CH4", combustion.Methane.MostCO2(), 11.70, 0.005)
	near(t, "CO2max C3H8", combustion.Propane.MostCO2(), 13.72, 0.005)
	for co2, want := range map[float64]float64{7: 50.1, 8: 52.5, 8.5: 53.6, 9: 54.6, 9.5: 55.5, 10: 56.4} {
		near(t, "dew point CH4", dewPoint(t, burn(t, &combustion.Methane, co2)), want, 0.06)
	}
	for co2, want := range map[float64]float64{10: 49.3, 11: 51.0} {
		near(t, "dew point C3H8", dewPoint(t, burn(t, &combustion.Propane, co2)), want, 0.06)
	}
	for _, co2 := range []float64{5, 8, 9, 10, 11.5} {
		methane, propane := burn(t, &combustion.Methane, co2), burn(t, &combustion.Propane, co2)
		near(t, "x", methane.WaterFraction(), 1/(1+50/co2), 1e-12)
		near(t, "mass CH4", methane.MassPerHeat()*1e6, 3.609/co2+0.0561, 3e-4)
		near(t, "mass C3H8", propane.MassPerHeat()*1e6, 4.253/co2+0.0499, 5e-4)
		standard, err := combustion.StandardMassFlow(co2, 1e6)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "factors of the standard against the balance", standard, methane.MassPerHeat()*1e6, 0.03*standard)
		o2, err := combustion.O2(&combustion.Methane, co2)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "O2", 100*methane.O2/methane.Dry, o2, 1e-9)
		// Mass in is mass out: the molar masses of the products.
		out := methane.CO2*44.0095e-3 + methane.O2*31.9988e-3 + methane.Water*18.01528e-3 +
			methane.N2*(28.9647e-3-0.2095*31.9988e-3)/0.7905
		near(t, "mass balance", out, methane.Mass, 2e-5*out)
	}
	methane := burn(t, &combustion.Methane, 9)
	near(t, "most CH4", methane.MostCondensate()*kWh, 0.1616, 1e-4)
	near(t, "most CH4 gross", methane.MostCondensate()*kWh*methane.Net/methane.Gross, 0.1455, 1e-4)
	propane := burn(t, &combustion.Propane, 10)
	near(t, "most C3H8", propane.MostCondensate()*kWh, 0.127, 1e-4)
	near(t, "most C3H8 gross", propane.MostCondensate()*kWh*propane.Net/propane.Gross, 0.117, 3e-4)
	for celsius, want := range map[float64]float64{20: 1.31, 15: 1.284} {
		air, err := methane.AirVolume(celsius, 101325)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "air need", air*kWh, want, 0.005)
	}
}

func TestCondensateProperties(t *testing.T) {
	p := burn(t, &combustion.Methane, 9)
	last := math.Inf(1)
	for celsius := 0.0; celsius <= 90; celsius++ {
		w, err := p.Condensate(celsius, 101325)
		if err != nil {
			t.Fatal(err)
		}
		if w > last || w < 0 || w > p.MostCondensate() {
			t.Fatalf("%g degC: %g after %g", celsius, w, last)
		}
		last = w
	}
	dew := dewPoint(t, p)
	at, err := p.Condensate(dew, 101325)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "at the dew point", at*kWh, 0, 1e-6)
	low, err := p.DewPoint(97000)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "dew point at 97 kPa", dew-low, 0.9, 0.1)
	moist, err := combustion.Burn(&combustion.Methane, 9, 0.01)
	if err != nil {
		t.Fatal(err)
	}
	if dewPoint(t, moist) <= dew {
		t.Error("moist air does not raise the dew point")
	}
	high, err := p.Condensate(85, 5e4) // water boils at 81 degC
	if err != nil || high != 0 {
		t.Errorf("above boiling: %g, %v", high, err)
	}
}

// TestSiegert sets the formula against the balance of atoms and the heat
// capacities: two methods within 4 %.
func TestSiegert(t *testing.T) {
	for _, co2 := range []float64{8.0, 9, 10} {
		q, err := combustion.SiegertNatural.Loss(70, 20, co2)
		if err != nil {
			t.Fatal(err)
		}
		p := burn(t, &combustion.Methane, co2)
		cp, err := p.HeatCapacity(45)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "loss", q, 100*p.MassPerHeat()*cp*50, 0.04*q)
		if cp < 1050 || cp > 1110 {
			t.Errorf("heat capacity %g", cp)
		}
	}
	if _, err := combustion.SiegertNatural.Loss(10, 20, 9); err == nil {
		t.Error("flue gas colder than its air passed")
	}
}

func TestCarbonMonoxide(t *testing.T) {
	ratio, err := combustion.CORatio(90, 9)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "ratio", ratio, 0.001, 1e-12)
	undiluted, err := combustion.UndilutedCO(&combustion.Methane, 90, 9)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "undiluted", undiluted, 90*11.70/9, 0.1)
	same, err := combustion.UndilutedCO(&combustion.Methane, 90, combustion.Methane.MostCO2())
	if err != nil {
		t.Fatal(err)
	}
	near(t, "without excess air", same, 90, 1e-9)
}

func TestRanges(t *testing.T) {
	for _, co2 := range []float64{0, 0.9, 11.8, -3, math.NaN(), math.Inf(1)} {
		if _, err := combustion.Burn(&combustion.Methane, co2, 0); err == nil {
			t.Errorf("CO2 %g passed", co2)
		}
	}
	if _, err := combustion.Burn(&combustion.Methane, 9, -0.1); err == nil {
		t.Error("negative vapor passed")
	}
	p := burn(t, &combustion.Methane, combustion.Methane.MostCO2())
	near(t, "air ratio", p.AirRatio, 1, 1e-6)
	near(t, "no oxygen left", p.O2, 0, 1e-6)
	if _, err := p.DewPoint(1e4); err == nil {
		t.Error("10 kPa passed")
	}
	if _, err := p.HeatCapacity(300); err == nil {
		t.Error("300 degC passed")
	}
	if _, err := p.Condensate(math.NaN(), 101325); err == nil {
		t.Error("no number passed")
	}
}

func TestNoAllocation(t *testing.T) {
	if n := testing.AllocsPerRun(100, func() {
		p, _ := combustion.Burn(&combustion.Methane, 9, 0.01)
		_, _ = p.DewPoint(101325)
		_, _ = p.Condensate(40, 101325)
	}); n != 0 {
		t.Errorf("%g allocations", n)
	}
}

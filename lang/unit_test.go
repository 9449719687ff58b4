package lang

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"
)

// Reference: testdata/reference/units.csv: GNU units, and pint where blank.
func TestConvertReference(t *testing.T) {
	f, err := os.Open("../testdata/reference/units.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for i, row := range rows[1:] {
		v, _ := strconv.ParseFloat(row[0], 64)
		cell := row[3]
		if cell == "" {
			cell = row[4]
		}
		want, err := strconv.ParseFloat(cell, 64)
		if err != nil {
			t.Fatalf("row %d: %v", i+2, err)
		}
		got, err := Convert(v, row[1], row[2])
		if err != nil {
			t.Errorf("row %d: %v", i+2, err)
			continue
		}
		tolerance := 1e-9
		if row[1] == "therm_EC" {
			tolerance = 4e-6
		}
		if math.Abs(got-want) > tolerance*math.Max(math.Abs(want), 1e-12) {
			t.Errorf("row %d: %s %s = %.12g %s, the reference has %.12g", i+2, row[0], row[1], got, row[2], want)
		}
	}
}

// Every unit goes to SI and back without loss, and is found by its symbol.
func TestUnitsRoundTrip(t *testing.T) {
	for i := range units {
		u := &units[i]
		if got, ok := LookupUnit(u.Symbol); !ok || got != u {
			t.Errorf("%s is not found, or stands twice", u.Symbol)
		}
		for _, v := range []float64{-3, 0, 0.001, 17.5, 1e6} {
			if got := FromSI(ToSI(v, u), u); math.Abs(got-v) > 1e-9*math.Max(1, math.Abs(v)) {
				t.Errorf("%s: %g comes back as %g", u.Symbol, v, got)
			}
		}
		if SIUnit(u.Dim) == "" || u.Dim.String() == "" {
			t.Errorf("%s: dimension %d has no SI unit or name", u.Symbol, u.Dim)
		}
		if toks := Tokens("value 1 " + u.Symbol); len(toks) != 4 || toks[2].Kind != UnitToken || toks[2].Text("value 1 "+u.Symbol) != u.Symbol {
			t.Errorf("%s does not lex as one unit: %v", u.Symbol, toks)
		}
	}
}

func TestNum(t *testing.T) {
	for _, c := range []struct {
		v    float64
		d    int
		want string
	}{{0, 4, "0"}, {math.Copysign(0, -1), 4, "0"}, {-0.00001, 2, "-0.00001"}, {1234.5, 4, "1234"}, {0.1 + 0.2, 4, "0.3"}, {19.999999, 4, "20"}, {-1.0136, 4, "-1.014"}, {1e6, 4, "1000000"}, {math.NaN(), 4, "not a number"}, {math.Inf(1), 4, "without limit"}} {
		if got := Num(c.v, c.d); got != c.want {
			t.Errorf("Num(%g, %d) = %q, want %q", c.v, c.d, got, c.want)
		}
	}
}

func TestParseQuantity(t *testing.T) {
	for _, c := range []struct {
		text string
		si   float64
		dim  Dimension
	}{{"35 mm", 0.035, Length}, {"35mm", 0.035, Length}, {"1 1/4 in", 1.25 * 0.0254, Length}, {"3/4 in", 0.75 * 0.0254, Length}, {"-3 degC", -3, Temperature}, {"21 mbar", 2100, Pressure}, {"0.6", 0.6, NoDimension}, {"1.1e-5 Pa.s", 1.1e-5, Viscosity}} {
		v, _, _, u, err := ParseQuantity(c.text)
		if err != nil {
			t.Errorf("%q: %v", c.text, err)
			continue
		}
		if u != nil {
			v = ToSI(v, u)
			if u.Dim != c.dim {
				t.Errorf("%q: dimension %s", c.text, u.Dim)
			}
		}
		if math.Abs(v-c.si) > 1e-12 {
			t.Errorf("%q = %g, want %g", c.text, v, c.si)
		}
	}
	for _, text := range []string{"", "x", "12 parsecs", "1..", "{", "1 2 3", "\"", "12 mm pipe"} {
		if _, _, _, _, err := ParseQuantity(text); err == nil {
			t.Errorf("%q has no error", text)
		}
	}
}

package lang

import "testing"

// A counterpart measures the same dimension and is a US unit.
func TestCounterparts(t *testing.T) {
	for metric, us := range counterparts {
		m, ok := LookupUnit(metric)
		u, ok2 := LookupUnit(us)
		if !ok || !ok2 || m.Dim != u.Dim || m.US || !u.US || Counterpart(metric) != us {
			t.Errorf("%s and %s", metric, us)
		}
	}
	if got := Counterpart("ppm"); got != "ppm" {
		t.Errorf("ppm becomes %s", got)
	}
}

// Rounded up or down, a printed value reads back on the right side of the value,
// and no further than one in the last digit of four.
func TestRoundedPrint(t *testing.T) {
	for _, v := range []float64{3e5, 344737.86, 1.0 / 3, 0.05, 123456.789, 7.2e4, 2.4384, -3.7} {
		for _, symbol := range []string{"m", "ft", "bar", "psi", "mm"} {
			read := func(text string) float64 {
				num, _, _, u, err := ParseQuantity(text)
				if err != nil {
					t.Fatal(err)
				}
				return ToSI(num, u)
			}
			up, down := read(InUp(v, symbol)), read(InDown(v, symbol))
			slack := 1e-9 * max(v, -v)
			if up < v-slack || down > v+slack || up-down > 2e-3*max(v, -v) {
				t.Errorf("%g %s: %s and %s", v, symbol, InDown(v, symbol), InUp(v, symbol))
			}
		}
	}
	if a, b := InUp(3e5, "bar"), InDown(3e5, "bar"); a != "3 bar" || b != "3 bar" {
		t.Errorf("%s and %s", a, b)
	}
}

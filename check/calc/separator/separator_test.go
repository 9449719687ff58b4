package separator_test

import (
	"fmt"
	"math"
	"testing"

	"example.org/tundish/check/calc/separator"
)

// By hand: 5.0 primary to 6.5 secondary at 80/55 is (5 x 80 + 1.5 x 55)/6.5 =
// 74.23; turned round (5 x 55 + 1.5 x 80)/6.5 = 60.77 goes back to the units;
// 12 to 15 at 80/50 is (12 x 80 + 3 x 50)/15 = 74.
func TestMix(t *testing.T) {
	for _, c := range []struct{ m1, m2, supply, ret, supplied, back float64 }{
		{5, 6.5, 80, 55, 482.5 / 6.5, 55},
		{6.5, 5, 80, 55, 80, 395 / 6.5},
		{12, 15, 80, 50, 74, 50},
		{4, 4, 75, 55, 75, 55},
		{4, 0, 75, 55, 75, 75}, // every valve shut: all of it turns back
	} {
		supplied, back, err := separator.Mix(c.m1, c.m2, c.supply, c.ret)
		if err != nil || math.Abs(supplied-c.supplied) > 1e-9 || math.Abs(back-c.back) > 1e-9 {
			t.Errorf("%+v: %g, %g, %v", c, supplied, back, err)
		}
	}
}

// Both ways agree: the heat that Mix carries, given to Carry, gives the same
// temperatures, and what leaves the primary circuit enters the secondary one.
func TestCarryAgreesWithMix(t *testing.T) {
	const cp = 4190.0
	for m1 := 0.5; m1 < 12; m1 += 0.7 {
		for m2 := 0.5; m2 < 12; m2 += 0.9 {
			supplied, back, err := separator.Mix(m1, m2, 78, 52)
			if err != nil {
				t.Fatal(err)
			}
			heat := m1 * cp * (78 - back)
			if d := heat - m2*cp*(supplied-52); math.Abs(d) > 1e-6*heat {
				t.Errorf("m1 %g, m2 %g: %g W are lost", m1, m2, d)
			}
			s, b, err := separator.Carry(m1, m2, 78, heat, cp)
			if err != nil || math.Abs(s-supplied) > 1e-9 || math.Abs(b-back) > 1e-9 {
				t.Errorf("m1 %g, m2 %g: %g/%g by heat, %g/%g by mixing, %v", m1, m2, s, b, supplied, back, err)
			}
		}
	}
}

func TestRefused(t *testing.T) {
	if _, _, err := separator.Mix(0, 1, 80, 60); err == nil {
		t.Error("no primary flow is taken")
	}
	if _, _, err := separator.Carry(1, 1, 80, 1e4, 0); err == nil {
		t.Error("no specific heat is taken")
	}
	if _, err := separator.Bore(1, 0); err == nil {
		t.Error("no velocity is taken")
	}
}

// 17.6 m3/h at 0.2 m/s: sqrt(4 x 0.0048889/(3.14159 x 0.2)) = 0.1764 m.
func ExampleBore() {
	d, err := separator.Bore(17.6/3600, 0.2)
	fmt.Printf("%.1f mm %v\n", d*1000, err)
	// Output: 176.4 mm <nil>
}

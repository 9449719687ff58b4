package parts_test

import (
	"fmt"
	"testing"

	"example.org/tundish/check/parts"
)

func quantity(list *parts.List, name, size string) (sum float64) {
	for _, l := range list.Lines {
		if l.Name == name && l.Size == size {
			sum += l.Quantity
		}
	}
	return sum
}

// A header of 2.6 m on frame sections of 1.3 m has one joint: flanged from the
// first size over the limit on, screwed at the last one under it. Between 2 in,
// which are 50.8 mm, and DN65 there is no size of steel pipe.
func TestFlangedFrom(t *testing.T) {
	for _, c := range []struct {
		material, size string
		gaskets        float64
	}{{"steel", "DN50", 0}, {"steel-40", "2 in", 0}, {"steel-40", "2 1/2 in", 1}, {"steel", "DN65", 1}} {
		list := parts.Of(resolve(t, "t.plant", fmt.Sprintf(`plant "Test plant, invented"
frame F in-line {
  section S1..S2 1.3 m straight
}
headers direct-return {
  header Flow-H %s %s 2.6 m upper
}
`, c.material, c.size)))
		if n := quantity(list, "gasket", c.size); n != c.gaskets {
			t.Errorf("%s %s: %g gaskets, want %g", c.material, c.size, n, c.gaskets)
		}
	}
}

// Straight flue pieces are 2 m long at most, and each has a seal.
func TestFluePieces(t *testing.T) {
	for length, want := range map[string]float64{"2.0 m": 1, "2.1 m": 2, "4.0 m": 2, "4.1 m": 3} {
		list := parts.Of(resolve(t, "t.plant", fmt.Sprintf(`plant "Test plant, invented"
flue F {
  riser Riser polypropylene DN110 %s
}
`, length)))
		if n := quantity(list, "flue seal", "DN110"); n != want {
			t.Errorf("%s of flue: %g seals, want %g", length, n, want)
		}
	}
}

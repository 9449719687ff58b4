package steps

import (
	"fmt"
	"testing"

	"example.org/tundish/check/solve"
)

// A header of 2.6 m on frame sections of 1.3 m is lifted in two pieces from the
// first flanged size on, and as one at the last screwed one.
func TestFlangedHeadersAreLiftedInPieces(t *testing.T) {
	for _, c := range []struct {
		material, size string
		pieces         float64
	}{{"steel", "DN50", 1}, {"steel-40", "2 in", 1}, {"steel-40", "2 1/2 in", 2}, {"steel", "DN65", 2}} {
		p := resolve("t.plant", fmt.Sprintf(`plant "Test plant, invented"
frame F in-line {
  section S1..S2 1.3 m straight
}
headers direct-return {
  header Flow-H %s %s 2.6 m upper
}
`, c.material, c.size))
		lifts := Of(p, solve.Run(p)).Find("flow-header").Lifts
		if len(lifts) != 1 || lifts[0].Count != c.pieces {
			t.Errorf("%s %s: lifts %+v, want %g", c.material, c.size, lifts, c.pieces)
		}
	}
}

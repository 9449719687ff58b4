package stability

import (
	"math"
	"math/rand/v2"
	"testing"
)

// A rectangle has four lines of tipping, and feet within it add none.
func TestEdgesOfRectangle(t *testing.T) {
	edges, err := Edges([]Point{{0, 0}, {2.6, 0}, {2.6, 0.9}, {0, 0.9}, {1.3, 0}, {1.3, 0.9}, {1, 0.5}})
	if err != nil || len(edges) != 4 {
		t.Fatalf("%v %v", edges, err)
	}
	center := Point{0.4, 0.25}
	least := math.Inf(1)
	for i := range edges {
		least = math.Min(least, edges[i].Inside(center))
	}
	if math.Abs(least-0.25) > 1e-12 {
		t.Errorf("%g from the nearest side", least)
	}
	outside := Point{1, -0.1}
	if d := edges[0].Inside(outside); math.Abs(d+0.1) > 1e-12 {
		t.Errorf("outside: %g", d)
	}
}

// The feet of an L stand on the corners of a pentagon; its long side cuts the
// inner corner off.
func TestEdgesOfCorner(t *testing.T) {
	edges, err := Edges([]Point{{0, 0}, {3.5, 0}, {3.5, 0.9}, {0.9, 0.9}, {0.9, 2.2}, {0, 2.2}})
	if err != nil || len(edges) != 5 {
		t.Fatalf("%d edges, %v", len(edges), err)
	}
	// Distance of (0.9, 0.9) from the line through (3.5, 0.9) and (0.9, 2.2), by
	// the area of their triangle over its base.
	want := 2.6 * 1.3 / math.Hypot(2.6, 1.3)
	found := false
	for i := range edges {
		found = found || math.Abs(edges[i].Inside(Point{0.9, 0.9})-want) < 1e-12
	}
	if !found {
		t.Errorf("no edge is %g from the inner corner", want)
	}
}

// Whatever the feet, each foot lies on the inner side of every edge, and some
// foot lies on each.
func TestEdgesAtRandom(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 1))
	for range 2000 {
		feet := make([]Point, 3+r.IntN(10))
		for i := range feet {
			feet[i] = Point{r.Float64() * 5, r.Float64() * 2}
		}
		edges, err := Edges(feet)
		if err != nil {
			t.Fatal(err)
		}
		for k := range edges {
			on := math.Inf(1)
			for i := range feet {
				d := edges[k].Inside(feet[i])
				on = math.Min(on, math.Abs(d))
				if d < -1e-9 {
					t.Fatalf("foot %v lies %g outside an edge of %v", feet[i], -d, feet)
				}
			}
			if on > 1e-9 {
				t.Fatalf("no foot on an edge of %v", feet)
			}
		}
	}
}

func TestEdgesRefused(t *testing.T) {
	for _, feet := range [][]Point{nil, {{0, 0}, {1, 0}}, {{0, 0}, {1, 0}, {2, 0}}, {{0, 0}, {0, 0}, {1, 1}}, {{0, 0}, {1, 0}, {0, 1e4}}} {
		if _, err := Edges(feet); err == nil {
			t.Errorf("%v gives edges", feet)
		}
	}
}

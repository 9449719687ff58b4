package pipe_test

import (
	"testing"

	"example.org/tundish/check/calc/pipe"
)

// The printed rows of the plumbing textbooks, and sizes between and beside them.
func TestWaterSupport(t *testing.T) {
	for _, c := range []struct {
		material string
		nominal  float64 // mm
		most     float64 // m
	}{
		{"steel", 15, 1.8},
		{"steel", 20, 2.4},
		{"steel", 25, 2.4},
		{"steel", 32, 2.7},
		{"steel-heavy", 40, 3},
		{"steel", 50, 3},
		{"steel", 65, 3},
		{"steel", 80, 3.6},
		{"steel", 150, 3.6},
		{"steel-40", 31.75, 2.7},
		{"steel-40", 76.2, 3.6},
		{"copper", 15, 1.2},
		{"copper", 22, 1.8},
		{"copper", 28, 1.8},
		{"copper", 35, 2.4},
		{"copper", 42, 2.4},
		{"copper", 54, 2.7},
	} {
		if got, ok := pipe.WaterSupport(c.material, c.nominal/1000); !ok || got != c.most {
			t.Errorf("%s %g: %g %v, want %g", c.material, c.nominal, got, ok, c.most)
		}
	}
	for _, c := range []string{"polypropylene", ""} {
		if got, ok := pipe.WaterSupport(c, 0.05); ok {
			t.Errorf("%s: %g", c, got)
		}
	}
	if got, ok := pipe.WaterSupport("steel", 0.008); ok {
		t.Errorf("DN8: %g", got)
	}
}

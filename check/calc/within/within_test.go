package within_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"example.org/tundish/check/calc/within"
)

func TestRange(t *testing.T) {
	for _, v := range []float64{1, 2, 3} {
		if err := within.Range("bore", v, 1, 3, "m"); err != nil {
			t.Errorf("%g: %v", v, err)
		}
	}
	for _, v := range []float64{math.Nextafter(1, 0), math.Nextafter(3, 4), math.NaN(), math.Inf(1), math.Inf(-1)} {
		var out *within.Error
		if err := within.Range("bore", v, 1, 3, "m"); !errors.As(err, &out) {
			t.Errorf("%g: no range error: %v", v, err)
		}
	}
}

func ExampleRange() {
	fmt.Println(within.Range("bore", 4, 0.001, 2, "m"))
	// Output: bore is 4 m; the method holds from 0.001 to 2 m
}

package fittings_test

import (
	"fmt"

	"example.org/tundish/check/calc/fittings"
)

// An elbow of DN50 loses 0.56 velocity heads.
func ExampleCraneElbow() {
	k, err := fittings.CraneElbow(0.0531, 90)
	fmt.Printf("%.3f %v\n", k, err)
	// Output: 0.564 <nil>
}

// A tee of a header: a quarter of the flow leaves by the branch.
func ExampleTee_DivergingRun() {
	k, err := fittings.Tee{Run: 0.1, Branch: 0.1, Angle: 90}.DivergingRun(0.006, 0.002)
	fmt.Printf("%.4f %v\n", k, err)
	// Output: -0.0625 <nil>
}

// What a designer writes, by size.
func ExampleSimple_K() {
	s, _ := fittings.SimpleOf(fittings.NonReturn)
	for _, bore := range []float64{0.0273, 0.0531} {
		k, err := s.K(bore)
		fmt.Printf("%s: %.2f %v\n", s.Name, k, err)
	}
	fmt.Println(s.Source)
	// Output:
	// non-return valve, swing type: 2.21 <nil>
	// non-return valve, swing type: 1.88 <nil>
	// Crane Technical Paper 410
}

func ExampleKvToK() {
	k, err := fittings.KvToK(10, 0.0273)
	fmt.Printf("%.3f %v\n", k, err)
	// Output: 8.887 <nil>
}

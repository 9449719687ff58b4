package valve_test

import (
	"fmt"

	"example.org/tundish/check/calc/valve"
)

// The safety valve of a unit of 100 kW at 3 bar.
func ExampleSizeFor() {
	s, err := valve.SizeFor(100, 3)
	fmt.Printf("DN%d up to %g kW, %v\n", s.Nominal, s.Output, err)
	_, err = valve.SizeFor(100, 4)
	fmt.Println(err)
	// Output:
	// DN20 up to 100 kW, <nil>
	// the table of safety valves by size holds for a set pressure of 2.5 or 3 bar only; judge this valve by its stated capacity
}

func ExampleADArea() {
	area, err := valve.ADArea(100)
	fmt.Printf("%.1f mm2 %v\n", area, err)
	// Output: 79.4 mm2 <nil>
}

// Approved Document G3's example: G1/2 outlet, 7 m, 4 elbows.
func ExampleUnventedFor() {
	u, counted, err := valve.UnventedFor("G1/2", 7, 4)
	fmt.Printf("%d mm: %g m of %g m, %v\n", u.D2, counted, u.Limit, err)
	// Output: 28 mm: 11 m of 18 m, <nil>
}

func ExampleOrifice_Flow() {
	m, c, err := valve.Orifice{Bore: 0.0531, Hole: 0.02655}.Flow(5000, 998.3, 1.0015e-3)
	fmt.Printf("%.3f kg/s, C %.4f, %v\n", m, c, err)
	// Output: 1.108 kg/s, C 0.6135, <nil>
}

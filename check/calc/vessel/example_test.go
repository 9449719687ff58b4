package vessel_test

import (
	"fmt"

	"example.org/tundish/check/calc/vessel"
)

// A plant of 2000 l at 80 degC, 8.15 m of water above the vessel, 3 bar.
func ExampleSystem_Size() {
	e, _ := vessel.Expansion(80, 0)
	static, _ := vessel.Static(8.15)
	p0, _ := vessel.Precharge(static)
	s := vessel.System{Volume: 2000, Expansion: e, Precharge: p0, SafetyValve: 3}
	z, err := s.Size()
	fmt.Printf("expands %.1f l, reserve %.0f l, at least %.0f l, %v\n", z.Expands, z.Reserve, z.Least, err)
	f, err := s.Fill(250)
	fmt.Printf("cold fill %.2f to %.2f bar with 250 l, %v\n", f.Least, f.Most, err)
	// Output:
	// expands 56.1 l, reserve 10 l, at least 165 l, <nil>
	// cold fill 1.19 to 1.55 bar with 250 l, <nil>
}

// A tower: the height asks for more pressure than the safety valve leaves.
func ExampleInfeasibleError() {
	s := vessel.System{Volume: 2000, Expansion: 0.0281, Precharge: 2.5, SafetyValve: 3}
	_, err := s.Size()
	fmt.Println(err)
	// Output: a precharge of 2.50 bar leaves no room below the end pressure of 2.50 bar under a safety valve of 3.00 bar: take a safety valve of higher set pressure if every part allows it, or place the vessel higher
}

func ExamplePressures_Order() {
	p := vessel.Pressures{
		Static: 0.8, Precharge: 1.1, ColdFill: 1.3, Hot: 2.2, End: 2.5,
		HighCutOut: 3.2, SafetyValve: 3, LowestRating: 4,
	}
	b, _, ok := p.Order()
	fmt.Printf("%v: %s %.1f bar, %s %.1f bar\n", ok, b.Lower, b.LowerBar, b.Upper, b.UpperBar)
	// Output: false: high-pressure cut-out 3.2 bar, safety valve 3.0 bar
}

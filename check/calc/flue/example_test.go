package flue_test

import (
	"fmt"

	"example.org/tundish/check/calc/flue"
)

func ExampleColumn_Draught() {
	p, err := flue.Pressure(500)
	if err != nil {
		fmt.Println(err)
		return
	}
	c := flue.Column{Height: 10, Flue: 60, Outside: 15, Pressure: p, GasConstant: flue.AirGasConstant}
	draught, err := c.Draught()
	fmt.Printf("%.4g Pa %v\n", draught, err)
	// Output: 15.29 Pa <nil>
}

func ExampleStream_Flow() {
	s := flue.Stream{Bore: 0.2, Roughness: 0.001, Temperature: 70, Pressure: 101325, MassFlow: 0.1865}
	f, err := s.Flow()
	fmt.Printf("%.4g m/s, %.4g Pa/m %v\n", f.Velocity, f.Gradient, err)
	// Output: 5.771 m/s, 2.736 Pa/m <nil>
}

// Two units open into a header through a pipe each; the header runs into a
// riser. All data are invented.
func ExampleCommon_Balance() {
	connector := flue.Duct{Bore: 0.11, Length: 1, Rise: 0.8, Roughness: 0.001, Loss: 1.6, Ambient: 20}
	first, second := connector, connector
	first.Next, second.Next = 1, 3
	c := flue.Common{
		Ducts: []flue.Duct{
			first,
			{Next: 3, Bore: 0.16, Length: 1.2, Rise: 0.06, Roughness: 0.001, Loss: 0.2, Ambient: 20},
			second,
			{Next: 4, Bore: 0.16, Length: 2, Rise: 0.1, Roughness: 0.001, Loss: 0.6, Ambient: 20},
			{Next: -1, Bore: 0.16, Length: 9, Rise: 9, Roughness: 0.001, Loss: 0.9, Transmittance: 2, Ambient: 5},
		},
		SafetyFactor: 1.2, Wind: 25, Pressure: 101325, Outside: 5, GasConstant: 298, HeatCapacity: 1070,
	}
	firings := []flue.Firing{
		{Duct: 0, MassFlow: 0.046, Temperature: 70, Push: 180},
		{Duct: 2, MassFlow: 0.046, Temperature: 70, Push: 180},
	}
	states := make([]flue.State, len(c.Ducts))
	if err := c.Balance(firings, states); err != nil {
		fmt.Println(err)
		return
	}
	for i := range firings {
		fmt.Printf("unit %d: %.3g Pa asked, %.3g Pa to spare\n", i+1, states[firings[i].Duct].Start, firings[i].Margin(states))
	}
	fmt.Printf("outlet %.3g degC\n", states[4].Out)
	// Output:
	// unit 1: 86.2 Pa asked, 93.8 Pa to spare
	// unit 2: 75.4 Pa asked, 105 Pa to spare
	// outlet 64.3 degC
}

func ExampleFallOf() {
	fall, err := flue.FallOf(3)
	fmt.Printf("%.3g mm/m %v\n", fall, err)
	// Output: 52.4 mm/m <nil>
}

func ExampleClass_Holds() {
	n1, _ := flue.ClassNamed("N1")
	fmt.Println(n1.Holds(5))
	// Output: false
}

func ExampleLine_Distance() {
	_, err := flue.OpeningRoomSealed.Distance(400e3)
	fmt.Println(err)
	// Output: net heat input at the terminal is 400 kW; the method holds from 70 to 333 kW
}

func ExampleUncorrectedHeight() {
	u, err := flue.UncorrectedHeight(1e6)
	fmt.Printf("%.3g m %v\n", u, err)
	// Output: 1.36 m <nil>
}

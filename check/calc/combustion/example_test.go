package combustion_test

import (
	"fmt"

	"example.org/tundish/check/calc/combustion"
)

func ExampleBurn() {
	p, err := combustion.Burn(&combustion.Methane, 9, 0)
	if err != nil {
		fmt.Println(err)
		return
	}
	dew, err := p.DewPoint(101325)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.4g g/s from 400 kW net, dew point %.3g degC\n", 1000*400e3*p.MassPerHeat(), dew)
	// Output: 182.8 g/s from 400 kW net, dew point 54.6 degC
}

func ExampleProducts_Condensate() {
	p, _ := combustion.Burn(&combustion.Methane, 9, 0)
	w, err := p.Condensate(35, 101325)
	fmt.Printf("%.3g of %.4g kg/kWh %v\n", 3.6e6*w, 3.6e6*p.MostCondensate(), err)
	// Output: 0.109 of 0.1616 kg/kWh <nil>
}

func ExampleSiegert_Loss() {
	q, err := combustion.SiegertNatural.Loss(70, 20, 9)
	fmt.Printf("%.3g %% %v\n", q, err)
	// Output: 2.51 % <nil>
}

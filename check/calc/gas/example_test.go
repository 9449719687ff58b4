package gas_test

import (
	"fmt"

	"example.org/tundish/check/calc/gas"
)

func ExampleSection_Drop() {
	s := gas.Section{
		RelativeDensity: 0.58, Viscosity: 1.1e-5, Bore: 0.0531, Roughness: 0.045e-3,
		Length: 20, Inlet: 2100, Flow: 42.3 / 3600,
	}
	d, err := s.Drop()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.4g Pa at %.4g m/s\n", d.Pressure, d.Velocity)
	// Output: 104.1 Pa at 5.198 m/s
}

func ExampleSection_Capacity() {
	s := gas.Section{RelativeDensity: 0.6, Viscosity: 1.1e-5, Bore: 0.0689, Roughness: 0.045e-3, Length: 28, Inlet: 2100}
	q, err := s.Capacity(100)
	fmt.Printf("%.4g m3/h %v\n", 3600*q, err)
	// Output: 68.28 m3/h <nil>
}

func ExampleRate() {
	q, err := gas.Rate(gas.HeatInput{Watts: 10e3, Basis: gas.Gross}, gas.CalorificValue{JPerM3: 38.5e6, Basis: gas.Gross})
	fmt.Printf("%.4g m3/h %v\n", 3600*q, err)
	// Output: 0.9351 m3/h <nil>
}

func ExampleHeightGain() {
	gain, err := gas.HeightGain(1.55, 3700, 6)
	fmt.Printf("%.3g Pa %v\n", gain, err)
	// Output: -43.7 Pa <nil>
}

func ExampleTightnessTime() {
	seconds, err := gas.TightnessTime(gas.MovementWaterGauge, 0.1815, gas.TestAir)
	fmt.Println(seconds/60, "min", err)
	// Output: 7 min <nil>
}

func ExampleTable_Size() {
	size, err := gas.HalfInch.Size(245, 60)
	fmt.Println(size, err)
	// Output: 1 <nil>
}

func ExampleLowPressureCapacity() {
	q, err := gas.LowPressureCapacity(gas.USNatural, 2.067, 60, 3)
	fmt.Printf("%.4g ft3/h %v\n", q, err)
	// Output: 4046 ft3/h <nil>
}

func ExampleMeterLoss() {
	loss, err := gas.MeterLoss(42.3/3600, 65.0/3600, 236)
	fmt.Printf("%.3g Pa %v\n", loss, err)
	// Output: 99.9 Pa <nil>
}

package topics

import (
	"example.org/tundish/check/calc/combustion"
	"example.org/tundish/check/calc/flue"
)

// flueInputs are the inputs that say what burns.
func flueInputs() []Input {
	return []Input{
		{Name: "co2", Unit: "%", Help: "in dry flue gas"},
		{Name: "propane", Unit: "-", Help: "1 propane, 0 natural gas as methane", Default: new(0.0)},
		{Name: "altitude", Unit: "m", Help: "above sea level", Default: new(0.0)},
	}
}

// burnt gives the products and the air pressure that flueInputs say; the air
// is dry.
func burnt(in Values) (p combustion.Products, pressure float64, err error) {
	propane, err := flag("propane", in)
	if err != nil {
		return p, 0, err
	}
	fuel := &combustion.Methane
	if propane {
		fuel = &combustion.Propane
	}
	if err := within("co2", in["co2"], 1, fuel.MostCO2()*(1+1e-6), "%"); err != nil {
		return p, 0, err
	}
	if err := within("altitude", in["altitude"], -500, 5000, "m"); err != nil {
		return p, 0, err
	}
	if p, err = combustion.Burn(fuel, in["co2"], 0); err != nil {
		return p, 0, err
	}
	pressure, err = flue.Pressure(in["altitude"])
	return p, pressure, err
}

var _ = register(topicDewPoint)

func topicDewPoint() Topic {
	return Topic{
		Name:    "dew-point",
		Summary: "temperature at which water begins to condense from flue gas, dry combustion air",
		Formula: "t = Tsat(x p); methane x = 1/(1 + 50/CO2%)",
		Source:  combustion.SourceDewPoint,
		Inputs:  flueInputs(),
		Outputs: []Output{
			{Name: "dew-point", Unit: "degC"},
			{Name: "water", Unit: "%", Help: "vapor in the wet flue gas by volume"},
		},
		Run: func(in Values) (Values, error) {
			p, pressure, err := burnt(in)
			if err != nil {
				return nil, err
			}
			t, err := p.DewPoint(pressure)
			if err != nil {
				return nil, err
			}
			return Values{"dew-point": t, "water": 100 * p.WaterFraction()}, nil
		},
	}
}

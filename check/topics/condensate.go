package topics

import "example.org/tundish/check/calc/combustion"

var _ = register(topicCondensate)

func topicCondensate() Topic {
	return Topic{
		Name:    "condensate",
		Summary: "water that condenses from the flue gas, at most and at a flue gas temperature",
		Formula: "w = (water - dry psat/(p - psat)) M P/Net; drains are sized on the most",
		Source:  combustion.SourceCondensate,
		Inputs: append([]Input{
			{Name: "net-input", Unit: "kW", Help: "net heat input of all units together"},
			{Name: "flue-temperature", Unit: "degC", Help: "of the saturated flue gas where it leaves the unit: return water and approach"},
		}, flueInputs()...),
		Outputs: []Output{
			{Name: "rate", Unit: "kg/h", Help: "at the flue gas temperature"},
			{Name: "most", Unit: "kg/h", Help: "all water of combustion"},
		},
		Run: func(in Values) (Values, error) {
			if err := within("net-input", in["net-input"], 0, 1e5, "kW"); err != nil {
				return nil, err
			}
			if err := within("flue-temperature", in["flue-temperature"], 0, 90, "degC"); err != nil {
				return nil, err
			}
			p, pressure, err := burnt(in)
			if err != nil {
				return nil, err
			}
			w, err := p.Condensate(in["flue-temperature"], pressure)
			if err != nil {
				return nil, err
			}
			perHour := 1000 * in["net-input"] * 3600
			return Values{"rate": w * perHour, "most": p.MostCondensate() * perHour}, nil
		},
	}
}

package topics

import "example.org/tundish/check/calc/flue"

var _ = register(topicFlueDraught)

func topicFlueDraught() Topic {
	return Topic{
		Name:    "flue-draught",
		Summary: "buoyancy of a flue of one temperature, products taken as air",
		Formula: "dp = g H (rho_outside - rho_flue), rho = p M/(R T), p of the 1976 standard atmosphere at the altitude",
		Source:  flue.SourceDraught,
		Inputs: []Input{
			{Name: "height", Unit: "m", Help: "from the entry to the outlet"},
			{Name: "flue-temperature", Unit: "degC", Help: "mean over the height"},
			{Name: "outside-temperature", Unit: "degC"},
			{Name: "altitude", Unit: "m", Help: "above sea level"},
		},
		Outputs: []Output{{Name: "draught", Unit: "Pa", Help: "negative where the flue is the colder one"}},
		Run: func(in Values) (Values, error) {
			for _, err := range [...]error{
				within("height", in["height"], 0, 300, "m"),
				within("flue-temperature", in["flue-temperature"], -60, 600, "degC"),
				within("outside-temperature", in["outside-temperature"], -60, 60, "degC"),
				within("altitude", in["altitude"], -500, 5000, "m"),
			} {
				if err != nil {
					return nil, err
				}
			}
			p, err := flue.Pressure(in["altitude"])
			if err != nil {
				return nil, err
			}
			c := flue.Column{
				Height: in["height"], Flue: in["flue-temperature"], Outside: in["outside-temperature"],
				Pressure: p, GasConstant: flue.AirGasConstant,
			}
			d, err := c.Draught()
			if err != nil {
				return nil, err
			}
			return Values{"draught": d}, nil
		},
	}
}

package topics

import "example.org/tundish/check/calc/gas"

var _ = register(topicGasRate)

func topicGasRate() Topic {
	return Topic{
		Name:    "gas-rate",
		Summary: "gas that a heat input burns; input and calorific value both net, or both gross",
		Formula: "Q = P / CV, both on the same basis",
		Source:  gas.SourceRate,
		Inputs: []Input{
			{Name: "heat-input", Unit: "kW", Help: "of one unit, net where the calorific value is net"},
			{Name: "calorific-value", Unit: "MJ/m3", Help: "on the basis of the heat input: G20 net 34.02, gross 37.78; G31 net 88.00, gross 95.65"},
			{Name: "units", Unit: "-", Help: "that fire together", Default: new(1.0)},
		},
		Outputs: []Output{{Name: "flow", Unit: "m3/h", Help: "at 15 degC and 1013.25 mbar"}},
		Run: func(in Values) (Values, error) {
			for _, err := range [...]error{
				within("heat-input", in["heat-input"], 0, 1e5, "kW"),
				within("calorific-value", in["calorific-value"], 1, 200, "MJ/m3"),
				within("units", in["units"], 1, 100, "-"),
			} {
				if err != nil {
					return nil, err
				}
			}
			// The desk user answers for the common basis; Net stands for it here.
			q, err := gas.Rate(
				gas.HeatInput{Watts: 1000 * in["heat-input"], Basis: gas.Net},
				gas.CalorificValue{JPerM3: 1e6 * in["calorific-value"], Basis: gas.Net},
			)
			if err != nil {
				return nil, err
			}
			return Values{"flow": 3600 * q * in["units"]}, nil
		},
	}
}

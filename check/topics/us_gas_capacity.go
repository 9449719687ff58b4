package topics

import "example.org/tundish/check/calc/gas"

var _ = register(topicUsGasCapacity)

func topicUsGasCapacity() Topic {
	return Topic{
		Name:    "us-gas-capacity",
		Summary: "capacity of a gas pipe with an inlet below 1.5 psi, US low-pressure equation",
		Formula: "D = Q^0.381 / (19.17 (dH/(Cr L))^0.206), Cr 0.6094, times sqrt(0.60/SG)",
		Source:  gas.SourceLowPressure,
		Inputs: []Input{
			{Name: "bore", Unit: "in", Help: "inner diameter: 2 in schedule 40 is 2.067"},
			{Name: "length", Unit: "ft", Help: "with the equivalent length of the fittings"},
			{Name: "drop", Unit: "inWC", Help: "allowed from end to end", Default: new(0.5)},
			{Name: "specific-gravity", Unit: "-", Help: "of the gas to air", Default: new(0.60)},
		},
		Outputs: []Output{
			{Name: "capacity", Unit: "ft3/h", Help: "0.4 to 0.9 % above the printed tables; within 1 % of a limit read the table"},
		},
		Run: func(in Values) (Values, error) {
			for _, err := range [...]error{
				within("bore", in["bore"], 0.2, 24, "in"),
				within("length", in["length"], 1, 5000, "ft"),
				within("drop", in["drop"], 0.01, 20.8, "inWC"),
				within("specific-gravity", in["specific-gravity"], 0.3, 2.1, "-"),
			} {
				if err != nil {
					return nil, err
				}
			}
			q, err := gas.LowPressureCapacity(gas.USNatural, in["bore"], in["length"], in["drop"])
			if err != nil {
				return nil, err
			}
			m, err := gas.GravityMultiplier(in["specific-gravity"])
			if err != nil {
				return nil, err
			}
			return Values{"capacity": q * m}, nil
		},
	}
}

var _ = register(topicUsGasCapacityHigh)

func topicUsGasCapacityHigh() Topic {
	return Topic{
		Name:    "us-gas-capacity-high",
		Summary: "capacity of a gas pipe with an inlet of 1.5 psi and more, US high-pressure equation",
		Formula: "D = Q^0.381 / (18.93 ((P1^2 - P2^2) Y/(Cr L))^0.206), Cr 0.6094, Y 0.9992, absolute pressures",
		Source:  gas.SourceHighPressure,
		Inputs: []Input{
			{Name: "bore", Unit: "in", Help: "inner diameter: 2 in schedule 40 is 2.067"},
			{Name: "length", Unit: "ft", Help: "with the equivalent length of the fittings"},
			{Name: "inlet-pressure", Unit: "psi", Help: "gauge"},
			{Name: "outlet-pressure", Unit: "psi", Help: "gauge"},
		},
		Outputs: []Output{{Name: "capacity", Unit: "ft3/h", Help: "natural gas of specific gravity 0.60"}},
		Run: func(in Values) (Values, error) {
			for _, err := range [...]error{
				within("bore", in["bore"], 0.2, 24, "in"),
				within("length", in["length"], 1, 5000, "ft"),
				within("inlet-pressure", in["inlet-pressure"], 1.5, 100, "psi"),
				within("outlet-pressure", in["outlet-pressure"], 0, in["inlet-pressure"]*(1-1e-6), "psi"),
			} {
				if err != nil {
					return nil, err
				}
			}
			q, err := gas.HighPressureCapacity(gas.USNatural, in["bore"], in["length"], in["inlet-pressure"], in["outlet-pressure"])
			if err != nil {
				return nil, err
			}
			return Values{"capacity": q}, nil
		},
	}
}

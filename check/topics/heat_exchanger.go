package topics

import "example.org/tundish/check/calc/exchanger"

var _ = register(topicHeatExchanger)

func topicHeatExchanger() Topic {
	return Topic{
		Name: "heat-exchanger", Summary: "duty and outlet temperatures of a counter-flow exchanger",
		Formula: "eps = (1 - exp(-NTU(1-Cr)))/(1 - Cr exp(-NTU(1-Cr))), NTU = UA/Cmin, Cr = Cmin/Cmax; Q = eps Cmin (th,in - tc,in); Q = UA LMTD",
		Source:  exchanger.Source,
		Inputs: []Input{
			{Name: "hot-flow", Unit: "kg/s", Help: "above 0"},
			{Name: "hot-specific-heat", Unit: "kJ/kg.K", Help: "4.19 for water", Default: new(4.19)},
			{Name: "hot-inlet", Unit: "degC", Help: "not below the cold inlet"},
			{Name: "cold-flow", Unit: "kg/s", Help: "above 0"},
			{Name: "cold-specific-heat", Unit: "kJ/kg.K", Help: "4.19 for water", Default: new(4.19)},
			{Name: "cold-inlet", Unit: "degC"},
			{Name: "conductance", Unit: "W/K", Help: "heat transfer coefficient times area"},
		},
		Outputs: []Output{
			{Name: "effectiveness", Unit: "-", Help: "duty over the most possible"},
			{Name: "duty", Unit: "kW"},
			{Name: "hot-outlet", Unit: "degC"},
			{Name: "cold-outlet", Unit: "degC"},
			{Name: "lmtd", Unit: "K", Help: "logarithmic mean temperature difference"},
		},
		Run: func(in Values) (Values, error) {
			r, err := exchanger.CounterFlow(
				exchanger.Side{Flow: in["hot-flow"], SpecificHeat: in["hot-specific-heat"] * 1000, Inlet: in["hot-inlet"]},
				exchanger.Side{Flow: in["cold-flow"], SpecificHeat: in["cold-specific-heat"] * 1000, Inlet: in["cold-inlet"]},
				in["conductance"])
			if err != nil {
				return nil, err
			}
			return Values{"effectiveness": r.Effectiveness, "duty": r.Duty / 1000, "hot-outlet": r.HotOutlet, "cold-outlet": r.ColdOutlet, "lmtd": r.Mean}, nil
		},
	}
}

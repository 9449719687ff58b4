package topics

import "example.org/tundish/check/calc/gas"

var _ = register(topicGasLoss)

func topicGasLoss() Topic {
	return Topic{
		Name:    "gas-loss",
		Summary: "pressure that a gas loses in a straight pipe",
		Formula: "p1^2 - p2^2 = (R T/M) (m/A)^2 [f L/D + 2 ln(p1/p2)], f by Colebrook, 64/Re up to Re 2000, T 288.15 K",
		Source:  gas.SourceIsothermal,
		Inputs: []Input{
			{Name: "relative-density", Unit: "-", Help: "of the gas to air"},
			{Name: "viscosity", Unit: "Pa.s", Help: "dynamic; natural gas 1.1e-5, propane 8e-6"},
			{Name: "bore", Unit: "mm", Help: "inner diameter"},
			{Name: "roughness", Unit: "mm", Help: "steel 0.045, copper and plastic 0.0015"},
			{Name: "length", Unit: "m", Help: "with the equivalent length of the fittings"},
			{Name: "inlet-pressure", Unit: "mbar", Help: "gauge"},
			{Name: "flow", Unit: "m3/h", Help: "at 15 degC and 1013.25 mbar"},
		},
		Outputs: []Output{
			{Name: "loss", Unit: "Pa", Help: "from inlet to outlet, without height"},
			{Name: "velocity", Unit: "m/s", Help: "at the inlet"},
		},
		Run: func(in Values) (Values, error) {
			bore := in["bore"]
			for _, err := range [...]error{
				within("relative-density", in["relative-density"], 0.05, 3, "-"),
				within("viscosity", in["viscosity"], 1e-6, 1e-4, "Pa.s"),
				within("bore", bore, 1, 2000, "mm"),
				within("roughness", in["roughness"], 0, 0.05*bore, "mm"),
				within("length", in["length"], 0, 1e5, "m"),
				within("inlet-pressure", in["inlet-pressure"], -500, 10000, "mbar"),
				within("flow", in["flow"], 0, 3.6e6, "m3/h"),
			} {
				if err != nil {
					return nil, err
				}
			}
			s := gas.Section{
				RelativeDensity: in["relative-density"], Viscosity: in["viscosity"],
				Bore: bore / 1000, Roughness: in["roughness"] / 1000, Length: in["length"],
				Inlet: 100 * in["inlet-pressure"], Flow: in["flow"] / 3600,
			}
			d, err := s.Drop()
			if err != nil {
				return nil, err
			}
			return Values{"loss": d.Pressure, "velocity": d.Velocity}, nil
		},
	}
}

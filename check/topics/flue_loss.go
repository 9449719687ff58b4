package topics

import "example.org/tundish/check/calc/flue"

var _ = register(topicFlueLoss)

func topicFlueLoss() Topic {
	return Topic{
		Name:    "flue-loss",
		Summary: "velocity and friction of flue gas in a round pipe, products taken as air",
		Formula: "v = m/(rho A), gradient = f/D rho v^2/2, f by Colebrook, 64/Re up to Re 2000, viscosity by Sutherland",
		Source:  flue.SourceFriction,
		Inputs: []Input{
			{Name: "bore", Unit: "mm", Help: "inner diameter"},
			{Name: "roughness", Unit: "mm", Help: "metal and plastic 1, masonry 2 to 5"},
			{Name: "temperature", Unit: "degC", Help: "of the flue gas"},
			{Name: "pressure", Unit: "Pa", Help: "absolute; 101325 at sea level"},
			{Name: "flow", Unit: "g/s", Help: "mass flow"},
		},
		Outputs: []Output{
			{Name: "velocity", Unit: "m/s"},
			{Name: "gradient", Unit: "Pa/m", Help: "without safety factor"},
		},
		Run: func(in Values) (Values, error) {
			bore := in["bore"]
			for _, err := range [...]error{
				within("bore", bore, 20, 3000, "mm"),
				within("roughness", in["roughness"], 0, 0.05*bore, "mm"),
				within("temperature", in["temperature"], -60, 600, "degC"),
				within("pressure", in["pressure"], 40000, 120000, "Pa"),
				within("flow", in["flow"], 0, 1e5, "g/s"),
			} {
				if err != nil {
					return nil, err
				}
			}
			s := flue.Stream{
				Bore: bore / 1000, Roughness: in["roughness"] / 1000, Temperature: in["temperature"],
				Pressure: in["pressure"], MassFlow: in["flow"] / 1000,
			}
			f, err := s.Flow()
			if err != nil {
				return nil, err
			}
			return Values{"velocity": f.Velocity, "gradient": f.Gradient}, nil
		},
	}
}

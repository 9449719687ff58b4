package topics

import (
	"example.org/tundish/check/calc/friction"
	"example.org/tundish/check/calc/water"
)

var _ = register(topicWaterLoss)

func topicWaterLoss() Topic {
	return Topic{
		Name: "water-loss", Summary: "velocity and friction of water in a pipe",
		Formula: "v = m/(rho pi/4 D^2), dp/L = f/D rho v^2/2, properties at 3 bar absolute",
		Source:  friction.SourceDarcy,
		Inputs: []Input{
			{Name: "bore", Unit: "mm", Help: "inner diameter"},
			{Name: "roughness", Unit: "mm", Help: "0.045 new steel, 0.0015 copper"},
			{Name: "flow", Unit: "kg/s", Help: "mass flow"},
			{Name: "temperature", Unit: "degC", Help: "of the water"},
		},
		Outputs: []Output{{Name: "velocity", Unit: "m/s"}, {Name: "gradient", Unit: "Pa/m"}},
		Run: func(in Values) (Values, error) {
			bore := in["bore"] / 1000
			if err := within("bore", in["bore"], 1, 2000, "mm"); err != nil {
				return nil, err
			}
			if err := within("flow", in["flow"], 0, 1000, "kg/s"); err != nil {
				return nil, err
			}
			s, err := water.At(in["temperature"], 3e5)
			if err != nil {
				return nil, err
			}
			v := friction.Velocity(in["flow"]/s.Density, bore)
			if v == 0 {
				return Values{"velocity": 0, "gradient": 0}, nil
			}
			f, err := friction.Factor(s.Density*v*bore/s.Viscosity, in["roughness"]/in["bore"])
			if err != nil {
				return nil, err
			}
			return Values{"velocity": v, "gradient": friction.Gradient(f, bore, s.Density, v)}, nil
		},
	}
}

package topics

import (
	"example.org/tundish/check/calc/combustion"
	"example.org/tundish/check/calc/water"
)

var _ = register(topicWaterProperties)

func topicWaterProperties() Topic {
	return Topic{
		Name: "water-properties", Summary: "density, viscosity, specific heat and vapor pressure of liquid water",
		Formula: "IAPWS-IF97 region 1 and 4, viscosity by IAPWS R12-08",
		Source:  water.SourceIF97,
		Inputs:  []Input{{Name: "temperature", Unit: "degC", Help: "0 to 200"}, {Name: "pressure", Unit: "bar", Help: "absolute", Default: new(3.0)}},
		Outputs: []Output{{Name: "density", Unit: "kg/m3"}, {Name: "viscosity", Unit: "Pa.s", Help: "dynamic"}, {Name: "specific-heat", Unit: "kJ/kg.K"}, {Name: "vapour-pressure", Unit: "kPa", Help: "absolute, of the temperature alone"}},
		Run: func(in Values) (Values, error) {
			s, err := water.At(in["temperature"], in["pressure"]*1e5)
			if err != nil {
				return nil, err
			}
			p, err := combustion.SaturationPressure(in["temperature"])
			if err != nil {
				return nil, err
			}
			return Values{"density": s.Density, "viscosity": s.Viscosity, "specific-heat": s.SpecificHeat / 1000, "vapour-pressure": p / 1000}, nil
		},
	}
}

package topics

import (
	"errors"

	"example.org/tundish/check/calc/network"
	"example.org/tundish/check/calc/water"
)

// networkPressure is the absolute pressure in Pa at which the density and the
// viscosity of a network's water are taken.
const networkPressure = 3e5

var _ = register(topicWaterNetwork)

func topicWaterNetwork() Topic {
	return Topic{
		Name: "water-network", Summary: "flows and heads of a pipe network",
		Formula: "sum of flows at a node = 0; head loss = (f L/D + K) v2/2g with Colebrook's f, g = 9.80665 m/s2; water at 3 bar absolute",
		Source:  network.SourceMethod,
		Inputs:  []Input{{Name: "temperature", Unit: "degC", Help: "of the water", Default: new(60.0)}},
		Outputs: []Output{{Name: "flow", Unit: "L/s", Help: "of links"}, {Name: "head-loss", Unit: "m", Help: "of links"}, {Name: "head", Unit: "m", Help: "of junctions"}},
		Form:    NetworkForm,
		Run: func(Values) (Values, error) {
			return nil, errors.New("water-network reads its parts from a table")
		},
		Table: func(rows [][]string, in Values) ([][]string, error) {
			s, err := water.At(in["temperature"], networkPressure)
			if err != nil {
				return nil, err
			}
			return Network(rows, s.Viscosity/s.Density)
		},
	}
}

package topics

import "example.org/tundish/check/calc/water"

var _ = register(topicExpansion)

func topicExpansion() Topic {
	return Topic{
		Name: "expansion", Summary: "how much water grows from cold to hot",
		Formula: "e = density(cold)/density(hot) - 1, by the cold volume",
		Source:  water.SourceIF97,
		Inputs: []Input{
			{Name: "cold-temperature", Unit: "degC", Help: "0 to 200"},
			{Name: "hot-temperature", Unit: "degC", Help: "not below the cold one"},
			{Name: "cold-pressure", Unit: "bar", Help: "absolute", Default: new(1.0)},
			{Name: "hot-pressure", Unit: "bar", Help: "absolute", Default: new(3.0)},
		},
		Outputs: []Output{{Name: "expansion", Unit: "-", Help: "of the cold volume"}},
		Run: func(in Values) (Values, error) {
			e, err := water.Expansion(in["cold-temperature"], in["hot-temperature"], in["cold-pressure"]*1e5, in["hot-pressure"]*1e5)
			if err != nil {
				return nil, err
			}
			return Values{"expansion": e}, nil
		},
	}
}

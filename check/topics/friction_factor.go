package topics

import "example.org/tundish/check/calc/friction"

var _ = register(topicFrictionFactor)

func topicFrictionFactor() Topic {
	return Topic{
		Name: "friction-factor", Summary: "Darcy friction factor of a round pipe",
		Formula: "f = 64/Re up to Re 2000; 1/sqrt f = -2 log10(eps/3.7 + 2.51/(Re sqrt f)) from Re 4000; a straight line between",
		Source:  friction.SourceColebrook,
		Inputs:  []Input{{Name: "reynolds", Unit: "-", Help: "Reynolds number"}, {Name: "relative-roughness", Unit: "-", Help: "roughness over bore"}},
		Outputs: []Output{{Name: "friction-factor", Unit: "-", Help: "Darcy's, four times Fanning's"}},
		Run: func(in Values) (Values, error) {
			f, err := friction.Factor(in["reynolds"], in["relative-roughness"])
			if err != nil {
				return nil, err
			}
			return Values{"friction-factor": f}, nil
		},
	}
}

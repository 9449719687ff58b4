package topics

import "example.org/tundish/check/calc/vessel"

var _ = register(topicVessel)

func topicVessel() Topic {
	return Topic{
		Name:    "vessel",
		Summary: "diaphragm expansion vessel of a sealed heating plant and its cold fill pressure",
		Formula: "V = (e Vs + reserve) (pe+1)/(pe-p0), e = (0.31 + 3.9e-4 t^2 + 3.2 additive) %, p0 = 0.0981 h + 0.3, pe = psv - 0.5 (to 5 bar) or 0.9 psv",
		Source:  vessel.SourceEN12828,
		Inputs: []Input{
			{Name: "volume", Unit: "l", Help: "water content of the whole plant"},
			{Name: "flow-temperature", Unit: "degC", Help: "greatest, 40 to 110"},
			{Name: "height", Unit: "m", Help: "of the highest point above the vessel"},
			{Name: "safety-valve", Unit: "bar", Help: "set pressure", Default: new(3.0)},
			{Name: "precharge", Unit: "bar", Help: "of the vessel; 0 takes the height and 0.3 bar, at least 0.7 is preferred", Default: new(0.0)},
			{Name: "additive", Unit: "%", Help: "antifreeze in the water", Default: new(0.0)},
			{Name: "vessel", Unit: "l", Help: "nominal volume of the vessel that is there; 0 takes the least", Default: new(0.0)},
		},
		Outputs: []Output{
			{Name: "expansion", Unit: "l", Help: "water that leaves the plant when hot"},
			{Name: "reserve", Unit: "l", Help: "water held ready for losses"},
			{Name: "precharge", Unit: "bar", Help: "of the gas, vessel empty of water"},
			{Name: "end-pressure", Unit: "bar", Help: "greatest working pressure"},
			{Name: "least-volume", Unit: "l", Help: "choose the next vessel made"},
			{Name: "cold-fill-least", Unit: "bar", Help: "so that the reserve is in"},
			{Name: "cold-fill-most", Unit: "bar", Help: "so that the hot plant stays at the end pressure"},
		},
		Run: func(in Values) (Values, error) {
			for _, err := range [...]error{
				within("volume", in["volume"], 1, 1e6, "l"),
				within("flow-temperature", in["flow-temperature"], 40, 110, "degC"),
				within("height", in["height"], 0, 240, "m"),
				within("safety-valve", in["safety-valve"], 1, 25, "bar"),
				within("precharge", in["precharge"], 0, 25, "bar"),
				within("additive", in["additive"], 0, 50, "%"),
				within("vessel", in["vessel"], 0, 1e6, "l"),
			} {
				if err != nil {
					return nil, err
				}
			}
			e, err := vessel.Expansion(in["flow-temperature"], in["additive"]/100)
			if err != nil {
				return nil, err
			}
			static, err := vessel.Static(in["height"])
			if err != nil {
				return nil, err
			}
			least, err := vessel.Precharge(static)
			if err != nil {
				return nil, err
			}
			p0 := in["precharge"]
			if p0 == 0 {
				p0 = least
			} else if err := within("precharge", p0, least*(1-1e-9), 25, "bar"); err != nil {
				return nil, err
			}
			s := vessel.System{Volume: in["volume"], Expansion: e, Precharge: p0, SafetyValve: in["safety-valve"]}
			z, err := s.Size()
			if err != nil {
				return nil, err
			}
			nominal := in["vessel"]
			if nominal == 0 {
				nominal = z.Least
			}
			f, err := s.Fill(nominal)
			if err != nil {
				return nil, err
			}
			return Values{
				"expansion": z.Expands, "reserve": z.Reserve, "precharge": p0, "end-pressure": z.EndPressure,
				"least-volume": z.Least, "cold-fill-least": f.Least, "cold-fill-most": f.Most,
			}, nil
		},
	}
}

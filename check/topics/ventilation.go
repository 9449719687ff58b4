package topics

import (
	"fmt"

	"example.org/tundish/check/calc/ventilation"
)

var _ = register(topicVentilation)

func topicVentilation() Topic {
	return Topic{
		Name:    "ventilation",
		Summary: "openings or fans of a plant room from 70 kW to 1.8 MW net, UK tables",
		Formula: "free area = (factor + summer addition) x kW net; inlet = (2.6 + summer) m3/h x kW net, inlet - extract = 1.35 m3/h x kW net",
		Source:  ventilation.SourceBS6644,
		Inputs: []Input{
			{Name: "net-input", Unit: "kW", Help: "net heat input of all units together"},
			{Name: "open-flued", Unit: "-", Help: "1 open-flued, 0 room-sealed", Default: new(0.0)},
			{Name: "enclosure", Unit: "-", Help: "0 plant room, 1 enclosure with air straight from outside", Default: new(0.0)},
			{Name: "summer-use", Unit: "%", Help: "share of the time in summer", Default: new(0.0)},
		},
		Outputs: []Output{
			{Name: "high-opening", Unit: "cm2", Help: "free area, not the face of the louver"},
			{Name: "low-opening", Unit: "cm2", Help: "free area, not the face of the louver"},
			{Name: "fan-inlet", Unit: "m3/h", Help: "where fans ventilate a plant room instead, no draught diverters"},
			{Name: "fan-extract", Unit: "m3/h", Help: "at that inlet, +- 0.18 m3/h per kW; never extract alone"},
		},
		Run: func(in Values) (Values, error) {
			if err := within("net-input", in["net-input"], 70, 1800, "kW"); err != nil {
				return nil, err
			}
			if err := within("summer-use", in["summer-use"], 0, 100, "%"); err != nil {
				return nil, err
			}
			open, err := flag("open-flued", in)
			if err != nil {
				return nil, err
			}
			enclosed, err := flag("enclosure", in)
			if err != nil {
				return nil, err
			}
			c := ventilation.RoomSealedInRoom
			switch {
			case open && enclosed:
				c = ventilation.OpenFluedInEnclosure
			case open:
				c = ventilation.OpenFluedInRoom
			case enclosed:
				c = ventilation.RoomSealedInEnclosure
			}
			watts, summer := 1000*in["net-input"], in["summer-use"]/100
			a, err := ventilation.Natural(watts, c, summer)
			if err != nil {
				return nil, err
			}
			f, err := ventilation.Mechanical(watts, false, summer)
			if err != nil {
				return nil, err
			}
			return Values{
				"high-opening": 1e4 * a.High, "low-opening": 1e4 * a.Low,
				"fan-inlet": 3600 * f.Inlet, "fan-extract": 3600 * f.Extract,
			}, nil
		},
	}
}

// flag reads an input that is 1 for yes and 0 for no.
func flag(name string, in Values) (bool, error) {
	switch in[name] {
	case 0:
		return false, nil
	case 1:
		return true, nil
	}
	return false, fmt.Errorf("%s is %g; it is 1 for yes or 0 for no", name, in[name])
}

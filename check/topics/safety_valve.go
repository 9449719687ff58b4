package topics

import (
	"errors"

	"example.org/tundish/check/calc/valve"
)

// airBar is the standard air pressure in bar.
const airBar = 1.01325

var _ = register(topicSafetyValve)

func topicSafetyValve() Topic {
	return Topic{
		Name:    "safety-valve",
		Summary: "safety valve of one heating unit: steam to blow off, flow area, nominal size",
		Formula: "m = 3600 Q/hfg; A Kdr = m/(0.2883 C sqrt(p0/v)) with C at k 1.135, p0 = set + rise + 1.013; at 3 bar A0 alpha = Q/1.26",
		Source:  valve.SourceISO4126,
		Inputs: []Input{
			{Name: "output", Unit: "kW", Help: "greatest heat output of the unit"},
			{Name: "set-pressure", Unit: "bar", Help: "of the safety valve, 1 to 9.5", Default: new(3.0)},
		},
		Outputs: []Output{
			{Name: "steam", Unit: "kg/h", Help: "that the output can raise at the relieving pressure"},
			{Name: "relieving-pressure", Unit: "bar", Help: "gauge: the set pressure with its rise, 0.5 bar to 5 bar, 10 % above"},
			{Name: "flow-area", Unit: "mm2", Help: "flow area times derated coefficient by EN ISO 4126-1"},
			{Name: "flow-area-rule", Unit: "mm2", Help: "the same by AD 2000-Merkblatt A2, 3 bar and up to 2700 kW only"},
			{Name: "nominal-size", Unit: "mm", Help: "DN of the inlet by a table for 2.5 and 3 bar and up to 900 kW, from memory and practice; missing elsewhere: judge the stated capacity of the valve"},
		},
		Run: func(in Values) (Values, error) {
			output, set := in["output"], in["set-pressure"]
			for _, err := range [...]error{
				within("output", output, 1, 1e5, "kW"),
				within("set-pressure", set, 1, 9.5, "bar"),
			} {
				if err != nil {
					return nil, err
				}
			}
			rise, err := valve.PressureRise(set)
			if err != nil {
				return nil, err
			}
			relieving := set + rise
			heat, volume, err := valve.Steam(relieving + airBar)
			if err != nil {
				return nil, err
			}
			steam, err := valve.SteamRate(output, heat)
			if err != nil {
				return nil, err
			}
			const area = 100.0 // mm2; the capacity goes with the area
			capacity, err := valve.SteamCapacity(area, 1, relieving+airBar, volume)
			if err != nil {
				return nil, err
			}
			out := Values{"steam": steam, "relieving-pressure": relieving, "flow-area": area * steam / capacity}
			if set == 3 && output <= valve.ADMost {
				rule, err := valve.ADArea(output)
				if err != nil {
					return nil, err
				}
				out["flow-area-rule"] = rule
			}
			switch size, err := valve.SizeFor(output, set); {
			case err == nil:
				out["nominal-size"] = float64(size.Nominal)
			case !errors.Is(err, valve.ErrSetPressure) && !errors.Is(err, valve.ErrTooLarge):
				return nil, err
			}
			return out, nil
		},
	}
}

package steps

import (
	"math"
	"strings"

	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/check/tables"
	"example.org/tundish/lang"
)

// State is the frame in one state of its building.
type State struct {
	solve.BuildState
	Frame *plant.Part
	Text  string // "after U3 is hung"
}

// frameStates adds the states that a step brings a frame to.
func (b *builder) frameStates(s *Step) {
	for _, f := range b.p.ByKind("frame") {
		add := func(st solve.BuildState, text string) {
			s.States = append(s.States, State{st, f, text})
		}
		switch s.ID {
		case "frame":
			if st, needs := solve.BareState(f); needs == "" {
				add(st, "the frame alone")
			} else {
				s.open(f, needs)
			}
		case "units":
			states, needs := solve.BuildStates(f)
			if needs != "" {
				s.open(f, needs)
				continue
			}
			for _, st := range states {
				add(st, stateText(&st))
			}
			b.safe(s, f, states)
		case "fill":
			if st, needs := solve.FilledState(b.p, f); needs == "" {
				add(st, "with every unit, full of water")
			} else {
				s.open(f, needs)
			}
		}
	}
}

// tipLimit is the limit of the rules on the tip angle, in degrees.
func tipLimit() float64 { return tables.LimitOf("tip-angle-least").Num * 180 / math.Pi }

// safe names the state from which on the frame stands safely, and who waits for
// it.
func (b *builder) safe(s *Step, f *plant.Part, states []solve.BuildState) {
	least := b.quantity(tables.LimitOf("tip-angle-least").Num, lang.Angle)
	n := solve.SafeFrom(states, tipLimit())
	switch {
	case n == len(states):
		s.Safe = append(s.Safe, f.Label()+" is not safe by itself before it is piped and fixed")
		s.Holds = append(s.Holds, Hold{Text: f.Label() + " is propped or tied before the first unit and stays so until its pipes are fitted and it is fixed", Witness: "the person in charge of the lift"})
	case n > 0:
		s.Safe = append(s.Safe, f.Label()+" is safe by itself only from the state "+stateText(&states[n])+" on")
		s.Holds = append(s.Holds, Hold{Text: f.Label() + " is propped or tied until the state " + stateText(&states[n]), Witness: "the person in charge of the lift"})
	case states[0].Held:
		s.Safe = append(s.Safe, f.Label()+" is held before the first unit ("+strings.ReplaceAll(f.Child("standing").First().Word, "-", " ")+"); without that hold see the angles")
	default:
		s.Safe = append(s.Safe, f.Label()+" stands by itself in every state, by the angle alone (at least "+least+")")
	}
}

func stateText(st *solve.BuildState) string {
	if st.Unit == nil {
		return "with its headers, before the first unit"
	}
	return "after " + st.Unit.Label() + " is hung"
}

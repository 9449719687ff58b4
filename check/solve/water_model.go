package solve

import (
	"example.org/tundish/check/calc/fittings"
	"example.org/tundish/check/calc/friction"
	"example.org/tundish/check/calc/pipe"
	"example.org/tundish/check/calc/water"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// Loss coefficients of what the table of line parts does not hold.
const (
	kReducer    = 0.1 // change of size; from memory, the usual middle of the tables
	kExitHeader = 1.0 // outflow into a separator: the whole velocity head is lost
)

// lineParts are the loss coefficients of line parts in one bore.
type lineParts struct {
	bore float64
	k    [fittings.ButterflyValve + 1]float64
}

// of gives the coefficients in a bore in m. Bores repeat from pipe to pipe, so
// the last one is kept.
func (l *lineParts) of(bore float64) *lineParts {
	if l.bore == bore {
		return l
	}
	l.bore = bore
	for p := fittings.Bend; p <= fittings.ButterflyValve; p++ {
		if s, ok := fittings.SimpleOf(p); ok {
			l.k[p], _ = s.K(bore) // the pipe tables hold no bore outside the range
		}
	}
	return l
}

// waterPipe is one pipe of the water side, ready for the law of Darcy.
type waterPipe struct {
	part                    *plant.Part
	bore, roughness, length float64
	k                       float64 // sum of loss coefficients
	stated                  float64 // further loss in Pa that the text states at design flow
	missing                 string
}

// newWaterPipe reads a pipe, branch or header with the parts counted in it.
func (l *lineParts) newWaterPipe(part *plant.Part, length plant.Value) waterPipe {
	w := waterPipe{part: part}
	material, size := part.Get("material"), part.Get("size")
	switch {
	case !material.Known():
		w.missing = "the material of " + part.Label()
	case !size.Known():
		w.missing = "the size of " + part.Label()
	case !length.Known():
		w.missing = "the length of " + part.Label()
	default:
		p := pipe.Find(material.Word, size.Num)
		if p == nil {
			w.missing = "a size of " + part.Label() + " that the table of " + material.Word + " pipes holds"
			break
		}
		w.bore, w.roughness, w.length = p.Bore(), p.Roughness, length.Num
	}
	if w.missing != "" {
		return w
	}
	l.of(w.bore)
	w.missing = openValue(part, "loss-coefficient", "loss", "pitch")
	for i := range counted {
		v := part.Get(counted[i].slot)
		if v.Open() && w.missing == "" {
			w.missing = openValue(part, counted[i].slot)
		}
		if v.Known() {
			k := kReducer
			if counted[i].part != 0 {
				k = l.k[counted[i].part]
			}
			w.k += v.Num * k
		}
	}
	if v := part.Get("loss-coefficient"); v.Known() && part.Kind != "header" {
		w.k += v.Num
	}
	if v := part.Get("loss"); v.Known() {
		w.stated = v.Num
	}
	return w
}

// counted are the slots that count line parts.
var counted = [...]struct {
	slot string
	part fittings.Part
}{
	{"bends", fittings.Bend},
	{"half-bends", fittings.HalfBend},
	{"tees", fittings.TeeRun},
	{"branch-tees", fittings.TeeBranch},
	{"valves", fittings.BallValve},
	{"reducers", 0},
	{"unions", fittings.Union},
}

// loss is the pressure lost in Pa, and velocity and gradient, at a flow in m3/s.
func (w *waterPipe) loss(flow float64, s *water.State) (pa, velocity, gradient float64) {
	velocity = friction.Velocity(flow, w.bore)
	if velocity <= 0 {
		return 0, 0, 0
	}
	re := s.Density * velocity * w.bore / s.Viscosity
	gradient = friction.Gradient(friction.Of(re, w.roughness/w.bore), w.bore, s.Density, velocity)
	return gradient*w.length + w.k*s.Density*velocity*velocity/2 + w.stated, velocity, gradient
}

// inputs are the numbers of a loss at a flow in m3/s, with the velocity and the
// gradient that it gave.
func (w *waterPipe) inputs(c *Context, flow, velocity, gradient float64, s *water.State) []Input {
	f := 0.0
	if velocity > 0 {
		f = gradient * w.bore / (s.Density * velocity * velocity / 2)
	}
	return c.Inputs(
		Input{Name: "V", Num: flow, Dim: lang.VolumeFlow, Unit: flowUnit(c.P)}, Input{Name: "D", Num: w.bore, Dim: lang.Length, Unit: "mm"}, Input{Name: "L", Num: w.length, Dim: lang.Length, Unit: "m"},
		Input{Name: "f", Num: f, Dim: lang.Ratio}, Input{Name: "sum K", Num: w.k, Dim: lang.Ratio}, Input{Name: "rho", Num: s.Density, Dim: lang.Density},
	)
}

// only is the pressure lost in Pa in n such pipes at a flow in m3/s above 0.
func (w *waterPipe) only(flow, n float64, s *water.State) float64 {
	if n <= 0 {
		return 0
	}
	v := friction.Velocity(flow, w.bore)
	re := s.Density * v * w.bore / s.Viscosity
	return n * (friction.Gradient(friction.Of(re, w.roughness/w.bore), w.bore, s.Density, v)*max(w.length, 0.01) + w.k*s.Density*v*v/2)
}

// statedAsFactor turns the loss that the text states at the design flow into a
// loss coefficient, so that it follows the flow. Without a flow it stays.
func (w *waterPipe) statedAsFactor(flow, density float64) {
	if w.stated <= 0 || flow <= 0 || w.bore <= 0 {
		return
	}
	v := friction.Velocity(flow, w.bore)
	w.k += 2 * w.stated / (density * v * v)
	w.stated = 0
}

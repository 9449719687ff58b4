package solve

import (
	"math"

	"example.org/tundish/check/calc/friction"
	"example.org/tundish/check/calc/pipe"
	"example.org/tundish/check/calc/water"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
)

// Loss coefficients of water fittings where nobody states their own. Read:
// from memory, the usual middle of the tables.
const (
	kBend       = 0.7  // elbow or bend of 90 degrees
	kHalfBend   = 0.3  // 45 degrees
	kTee        = 0.2  // straight through
	kBranchTee  = 1.2  // turned through; also where a branch joins a header
	kValve      = 0.2  // full-bore valve
	kReducer    = 0.1  // change of size
	kUnion      = 0.05 // union
	kNonReturn  = 2.5  // non-return valve
	kStrainer   = 3.0  // clean strainer
	kExitHeader = 1.0  // outflow into a separator
)

// SourceFittings is the source of the loss coefficients above.
var SourceFittings = cite.Source{Work: "loss coefficients of fittings, middle of the usual tables", Read: cite.Memory}

// waterPipe is one pipe of the water side, ready for the law of Darcy.
type waterPipe struct {
	part                    *plant.Part
	bore, roughness, length float64
	k                       float64 // sum of loss coefficients
	stated                  float64 // further loss in Pa that the text states at design flow
	missing                 string
}

func newWaterPipe(part *plant.Part, length plant.Value) waterPipe {
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
	count := func(slot string, k float64) {
		if v := part.Get(slot); v.Known() {
			w.k += v.Num * k
		}
	}
	count("bends", kBend)
	count("half-bends", kHalfBend)
	count("tees", kTee)
	count("branch-tees", kBranchTee)
	count("valves", kValve)
	count("reducers", kReducer)
	count("unions", kUnion)
	if part.Kind != "header" {
		count("loss-coefficient", 1)
	}
	if v := part.Get("loss"); v.Known() {
		w.stated = v.Num
	}
	return w
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

// curve reads the points of a curve block in order.
func curve(block *plant.Part) (flows, pressures []float64) {
	for _, pt := range block.Children("point") {
		f, p := pt.Get("flow"), pt.Get("pressure")
		if f.Known() && p.Known() {
			flows, pressures = append(flows, f.Num), append(pressures, p.Num)
		}
	}
	return flows, pressures
}

// square gives the loss in Pa of an apparatus at a flow from its curve: with
// the square of the flow between and beyond its points.
func square(flows, pressures []float64, flow float64) (float64, bool) {
	n := len(flows)
	if n == 0 {
		return 0, false
	}
	k := 0
	for k < n-1 && flows[k+1] < flow {
		k++
	}
	if k == n-1 || flow <= flows[0] {
		if flow <= flows[0] {
			k = 0
		}
		if flows[k] <= 0 {
			return 0, false
		}
		r := flow / flows[k]
		return pressures[k] * r * r, true
	}
	a, b := flows[k]*flows[k], flows[k+1]*flows[k+1]
	t := (flow*flow - a) / (b - a)
	return pressures[k] + t*(pressures[k+1]-pressures[k]), true
}

// headAt gives the head in Pa of a pump at a flow, along parabolas between its
// points; ok is false outside them, for a curve is not extrapolated.
func headAt(flows, heads []float64, flow float64) (pa float64, ok bool) {
	n := len(flows)
	if n < 2 || flow < flows[0]-1e-12 || flow > flows[n-1]+1e-12 {
		return math.NaN(), false
	}
	k := 0
	for k < n-2 && flows[k+1] < flow {
		k++
	}
	a, b := flows[k]*flows[k], flows[k+1]*flows[k+1]
	t := (flow*flow - a) / (b - a)
	return heads[k] + t*(heads[k+1]-heads[k]), true
}

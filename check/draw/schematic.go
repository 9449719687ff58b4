package draw

import (
	"fmt"
	"strings"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
)

// The grid of the schematic in px.
const (
	unitPitch  = 122.0
	unitsLeft  = 400.0 // center of the first unit
	gasTrainX  = 70.0
	drainX     = 262.0
	trapX      = drainX - 10 // a flue's trap drains beside the main
	flueY      = 130.0
	gasY       = 220.0
	unitY      = 340.0
	drainY     = 420.0
	flowY      = 560.0
	returnY    = 620.0
	rowGap     = 40.0 // more between the arms of an L
	bottomY    = 700.0
	unitHalf   = 39.0
	portOffset = 26.0
)

// schematic draws one plant.
type schematic struct {
	*canvas
	*topology
	res    *solve.Results
	x      []float64 // centers of the units
	right  float64   // where the headers end
	unitAt map[*plant.Part]float64
}

// Schematic draws the whole plant, not to scale: gas, flow, return, flue and
// condensate with the parts in them. The results may be nil; a report gives the
// margins, without one nothing is colored.
func Schematic(p *plant.Plant, r *solve.Results, rep *check.Report) []byte {
	s := &schematic{canvas: newCanvas(MarksOf(rep)), topology: newTopology(p), res: r, unitAt: map[*plant.Part]float64{}}
	x := unitsLeft
	for i, u := range s.units {
		if i > 0 && s.layout() == "l-shaped" && s.rowOf[u] != s.rowOf[s.units[i-1]] {
			x += rowGap
		}
		s.x = append(s.x, x)
		s.unitAt[u] = x
		x += unitPitch
	}
	s.right = unitsLeft + 20
	if n := len(s.x); n > 0 {
		s.right = s.x[n-1] + 60
	}
	s.gasRun()
	s.headers()
	s.flues()
	s.drains()
	for i, u := range s.units {
		s.unit(u, s.x[i])
	}
	s.corner()
	s.beyond()
	s.safety()
	s.plan()
	notes := []string{
		"Not to scale. Lines join only at a dot. Along a branch and a pipe the parts are drawn in the usual order, for the text states which there are, not where each stands.",
	}
	if s.layout() == "back-to-back" {
		notes = append(notes, "The units stand back to back and are drawn side by side in the order of their take-offs; the plan shows where they stand.")
	}
	notes = append(notes, s.types()...)
	about := fmt.Sprintf("Schematic of a heating plant with %d units: gas, flow, return, flue and condensate; each part styled by the share of its limit that it uses.", len(s.units))
	return s.finish(Title("Schematic", p), about, notes, []service{gasLine, flowLine, returnLine, flueLine, condensateLine})
}

// gasRun draws the run from the supply up the left side to the manifold.
func (s *schematic) gasRun() {
	if s.p.Block("gas-run") == nil {
		s.label(around(gasTrainX, gasY, 2, 2), nil, []side{right}, "no gas run stated")
		return
	}
	y := gasY + 60
	// From the manifold back to the supply, downwards.
	for i := len(s.gas) - 1; i >= 0; i-- {
		part := s.gas[i]
		name := ""
		switch part.Kind {
		case "regulator":
			name = "regulator"
		case "meter":
			name = "meter"
		case "booster":
			name = "booster"
		case "filter":
			name = "filter"
		case "valve":
			name = "valve"
			if part.Get("kind").Is("emergency") || part.Has("automatic") {
				name = "actuated"
			}
		}
		if name == "" {
			top := y - 24
			if i == len(s.gas)-1 {
				s.pipe(part, gasLine, point{gasTrainX, y + 24}, point{gasTrainX, gasY}, point{unitsLeft - portOffset - 30, gasY})
				s.tag(gasLine, 190, gasY)
			} else {
				s.pipe(part, gasLine, point{gasTrainX, y + 24}, point{gasTrainX, top})
			}
			s.label(around(gasTrainX, y, 6, 30), part, []side{right, left}, asWritten(part.Get("material"))+" "+asWritten(part.Get("size")), asWritten(part.Get("length")))
			y += 48
			continue
		}
		s.pipe(nil, gasLine, point{gasTrainX, y + 24}, point{gasTrainX, y - 24})
		b := s.sym(name, part, gasTrainX, y, -90)
		if name == "meter" {
			w := TextWidth("FQ", 11, true)
			s.text(gasTrainX-w/2, y+4, 11, true, "", "FQ")
		}
		s.label(b, part, []side{right, left}, gasFact(part))
		y += 48
	}
	b := s.sym("source", nil, gasTrainX, y-10, -90)
	supply := s.p.Block("basis").Child("supply")
	s.label(b, nil, []side{right, below}, "gas supply", asWritten(supply.Get("pressure")))
	if len(s.gas) == 0 || s.gas[len(s.gas)-1].Kind != "pipe" {
		s.pipe(nil, gasLine, point{gasTrainX, gasY + 36}, point{gasTrainX, gasY}, point{unitsLeft - portOffset - 30, gasY})
	}
	s.manifold()
}

func gasFact(part *plant.Part) string {
	switch part.Kind {
	case "regulator":
		return asWritten(part.Get("outlet")) + " outlet"
	case "meter":
		return asWritten(part.Get("rating"))
	}
	return asWritten(part.Get("size"))
}

func (s *schematic) manifold() {
	if s.main == nil || len(s.x) == 0 {
		return
	}
	x0, x1 := unitsLeft-portOffset-30, s.right-40
	s.pipe(s.main, gasLine, point{x0, gasY}, point{x1, gasY})
	s.label(around(x0+4, gasY, 8, 8), s.main, []side{above, below, left}, asWritten(s.main.Get("size")))
	s.ends(s.p.Block("gas-run"), s.main, x1, gasY, -1)
}

// ends draws what closes, vents and drains the end of a run at x; inward is the
// direction of the run from there.
func (s *schematic) ends(block, run *plant.Part, x, y, inward float64) {
	if block == nil || run == nil {
		return
	}
	k := 0.0
	for _, c := range block.Parts {
		ref, ok := c.Ref("of")
		if !ok || ref.Part != run {
			continue
		}
		switch c.Kind {
		case "blank":
			s.sym("blank", c, x, y, 0)
		case "vent":
			s.sym("vent", c, x+inward*(14+16*k), y-8, 0)
			k++
		case "drain-cock":
			s.sym("drain", c, x+inward*(14+16*k), y+8, 0)
			k++
		}
	}
}

// corner shows where an L-shaped frame turns.
func (s *schematic) corner() {
	if s.layout() != "l-shaped" {
		return
	}
	for i := 1; i < len(s.units); i++ {
		if s.rowOf[s.units[i]] != s.rowOf[s.units[i-1]] {
			x := (s.x[i] + s.x[i-1]) / 2
			s.thin("2 3", point{x, flueY - 30}, point{x, returnY + 26})
			s.label(around(x, returnY+30, 4, 4), nil, []side{below, right}, "corner of the frame")
		}
	}
}

// types says of which type the units are.
func (s *schematic) types() []string {
	var out []string
	names := map[string][]string{}
	var order []string
	for _, u := range s.p.Units() {
		t := asWritten(u.Get("type"))
		if t == "" {
			t = "not stated"
		}
		if names[t] == nil {
			order = append(order, t)
		}
		names[t] = append(names[t], u.Label())
	}
	for _, t := range order {
		out = append(out, "Type "+t+": "+strings.Join(names[t], ", ")+".")
	}
	return out
}

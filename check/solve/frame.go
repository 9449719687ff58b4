package solve

import (
	"math"

	"example.org/tundish/check/calc/pipe"
	"example.org/tundish/check/calc/stability"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// Formulas of the frame.
var (
	FormulaFrameMass   = Formula{Text: "frame with headers + units hung so far, empty of water", Source: stability.SourceStatics}
	FormulaFrameCenter = Formula{Text: "x = sum(m x)/sum(m) from the nearest line of feet; h = sum(m h)/sum(m)", Source: stability.SourceStatics}
	FormulaTipAngle    = Formula{Text: "angle = atan(x/h)", Source: stability.SourceStatics}
	FormulaTipForce    = Formula{Text: "F = M g x/z at the top of the frame; below 0 it must be held back", Source: stability.SourceStatics}
	FormulaFrameLength = Formula{Text: "sum of the sections of one arm", Source: stability.SourceStatics}
	FormulaWetMass     = Formula{Text: "frame with headers + units + water of units, headers and branches", Source: stability.SourceStatics}
	FormulaFloorLoad   = Formula{Text: "q = M g/(length x depth)", Source: stability.SourceStatics}
	FormulaFootLoad    = Formula{Text: "F = M g (share of the heavier line of feet)/(feet of one line)", Source: stability.SourceStatics}
	FormulaRowLength   = Formula{Text: "(units - 1) pitch + width of a unit", Source: stability.SourceStatics}
	FormulaSideGap     = Formula{Text: "pitch - width of a unit", Source: stability.SourceStatics}
	FormulaUneven      = Formula{Text: "greatest difference of the units hung on the two sides, over every state", Source: stability.SourceStatics}
)

// BuildState is the frame at one moment of its building: after the unit was
// hung, or empty before the first one.
type BuildState struct {
	Unit  *plant.Part // nil for the empty frame
	Frame stability.Frame
	Angle float64 // degrees; below 0 it tips by itself
	Force float64 // N at the top of the frame
	Held  bool    // tied or anchored in this state
	Sides [2]int  // units hung on each side
}

// BuildStates gives the states of a frame in its hang order, the empty frame
// first. needs says what is not stated; then there are no states.
func BuildStates(p *plant.Plant, f *plant.Part) (states []BuildState, needs string) {
	mass, at := f.Child("mass").Get("mass"), f.Child("mass").Get("at")
	depth, offset, hang := f.Child("depth").First(), f.Child("offset").First(), f.Child("hang-height").First()
	height, held, needs := f.Child("height").First(), heldBefore(f), ""
	order := f.Child("hang-order").Refs("units")
	sides := rowSides(f)
	switch {
	case f.Get("layout").Is("l-shaped"):
		return nil, "a layout that the sum covers (in-line or back-to-back)"
	case !mass.Known() || !at.Known():
		return nil, "the mass of " + f.Label() + " and the height of its center of gravity (mass ... at)"
	case !depth.Known():
		return nil, "the depth of " + f.Label() + " over its feet (depth)"
	case !height.Known():
		return nil, "the height of " + f.Label()
	case !offset.Known():
		return nil, "the distance of the units from the line of feet (offset)"
	case !hang.Known():
		return nil, "the height of the units' center of gravity (hang-height)"
	case len(order) == 0:
		return nil, "the order in which units are hung (hang-order)"
	}
	hung := []stability.Mass{{Mass: mass.Num, Offset: depth.Num / 2, Height: at.Num}}
	state := func(unit *plant.Part, n [2]int) string {
		s, err := tip(hung, depth.Num, height.Num)
		if err != nil {
			return "a frame that the sum covers: " + err.Error()
		}
		s.Unit, s.Held, s.Sides = unit, held, n
		states = append(states, s)
		return ""
	}
	n := [2]int{}
	if needs = state(nil, n); needs != "" {
		return nil, needs
	}
	for _, ref := range order {
		u := ref.Part
		m := u.Child("mass").Get("mass")
		if !m.Known() {
			return nil, "the mass of " + u.Label()
		}
		side, ok := sides[u]
		if !ok {
			return nil, "the row in which " + u.Label() + " hangs"
		}
		x := offset.Num
		if side == 1 {
			x = depth.Num - offset.Num
		}
		hung = append(hung, stability.Mass{Mass: m.Num, Offset: x, Height: hang.Num})
		n[side]++
		if needs = state(u, n); needs != "" {
			return nil, needs
		}
	}
	return states, ""
}

// tip takes the nearer of the two lines of feet as the edge.
func tip(hung []stability.Mass, depth, top float64) (s BuildState, err error) {
	f, err := stability.Sum(hung)
	if err != nil {
		return s, err
	}
	f.Offset = math.Min(f.Offset, depth-f.Offset)
	if s.Angle, err = f.TipAngle(); err != nil {
		return s, err
	}
	s.Force, err = f.TipForce(top)
	s.Frame = f
	return s, err
}

// heldBefore tells a frame that is tied or anchored before the first unit.
func heldBefore(f *plant.Part) bool {
	s := f.Child("standing")
	return !s.First().Is("free") && s.Get("standing").Known() && s.Get("from").Is("before-hanging")
}

// rowSides tells on which side each unit hangs: the first row is side 0, and a
// frame in line has no other.
func rowSides(f *plant.Part) map[*plant.Part]int {
	out := map[*plant.Part]int{}
	for i, row := range f.Children("row") {
		for _, ref := range row.Refs("units") {
			if f.Get("layout").Is("back-to-back") {
				out[ref.Part] = min(i, 1)
			} else {
				out[ref.Part] = 0
			}
		}
	}
	return out
}

// SafeFrom is the first state from which on the frame stands by itself or is
// held: 0 is the empty frame, len(states) means not before it is piped. least is
// the tip angle in degrees that counts as safe.
func SafeFrom(states []BuildState, least float64) int {
	n := len(states)
	for n > 0 && (states[n-1].Held || states[n-1].Angle >= least*(1-1e-9)) {
		n--
	}
	return n
}

// solveFrame computes for each frame its states of building, its length, the
// loads on the floor and the room that its rows take.
func solveFrame(c *Context) {
	for _, f := range c.P.ByKind("frame") {
		buildValues(c, f)
		rowValues(c, f)
		floorValues(c, f)
	}
}

func buildValues(c *Context, f *plant.Part) {
	states, needs := BuildStates(c.P, f)
	if needs != "" {
		c.Missing(f, "tip-angle", Least, Always, needs)
		return
	}
	worst := 0
	uneven := 0.0
	for i, s := range states {
		if s.Angle < states[worst].Angle {
			worst = i
		}
		uneven = math.Max(uneven, math.Abs(float64(s.Sides[0]-s.Sides[1])))
		if s.Unit != nil {
			stateValues(c, s.Unit, "hung-", s)
		}
	}
	w := states[worst]
	after := "the frame is empty"
	if w.Unit != nil {
		after = "after " + w.Unit.Label() + " is hung"
	}
	in := c.Inputs(Input{Name: "x", Num: w.Frame.Offset, Dim: lang.Length}, Input{Name: "h", Num: w.Frame.Height, Dim: lang.Length}, Input{Name: "state", Text: after})
	c.Add(Quantity{Part: f, Name: "tip-angle", Stat: Least, Num: w.Angle * math.Pi / 180, Dim: lang.Angle, Unit: "deg", Formula: &FormulaTipAngle, Inputs: in})
	stateValues(c, f, "", states[len(states)-1])
	if f.Get("layout").Is("back-to-back") {
		c.Add(Quantity{Part: f, Name: "uneven-units", Stat: Most, Num: uneven, Dim: lang.Count, Formula: &FormulaUneven, At: f.Child("hang-order").Span()})
	}
}

// stateValues stores one state of building at a unit or, for the last, the frame.
func stateValues(c *Context, at *plant.Part, prefix string, s BuildState) {
	in := c.Inputs(Input{Name: "M", Num: s.Frame.Mass, Dim: lang.Mass}, Input{Name: "x", Num: s.Frame.Offset, Dim: lang.Length}, Input{Name: "h", Num: s.Frame.Height, Dim: lang.Length})
	c.Add(Quantity{Part: at, Name: prefix + "frame-mass", Num: s.Frame.Mass, Dim: lang.Mass, Formula: &FormulaFrameMass})
	c.Add(Quantity{Part: at, Name: prefix + "center-offset", Num: s.Frame.Offset, Dim: lang.Length, Formula: &FormulaFrameCenter})
	c.Add(Quantity{Part: at, Name: prefix + "center-height", Num: s.Frame.Height, Dim: lang.Length, Formula: &FormulaFrameCenter})
	c.Add(Quantity{Part: at, Name: prefix + "tip-angle", Num: s.Angle * math.Pi / 180, Dim: lang.Angle, Unit: "deg", Formula: &FormulaTipAngle, Inputs: in[1:]})
	c.Add(Quantity{Part: at, Name: prefix + "tip-force", Num: s.Force, Dim: lang.Force, Formula: &FormulaTipForce, Inputs: in[:2]})
}

// rowValues computes the length of the frame and what its rows take of it.
func rowValues(c *Context, f *plant.Part) {
	rows, sections := f.Children("row"), f.Children("section")
	length, needs := 0.0, ""
	for _, s := range sections {
		v := s.Get("length")
		if !v.Known() {
			needs = "the length of " + s.Label()
		}
		length += v.Num
	}
	if len(sections) == 0 {
		needs = "the sections of " + f.Label()
	}
	if f.Get("layout").Is("back-to-back") && len(rows) > 1 {
		length /= float64(len(rows))
	}
	if needs != "" {
		c.Missing(f, "length", Plain, Always, needs)
	} else {
		c.Add(Quantity{Part: f, Name: "length", Num: length, Dim: lang.Length, Formula: &FormulaFrameLength})
	}
	pitch := f.Child("pitch").First()
	for _, row := range rows {
		wide, ok := 0.0, len(row.Refs("units")) > 0
		for _, ref := range row.Refs("units") {
			v := ref.Part.Child("size").Get("wide")
			wide = math.Max(wide, v.Num)
			ok = ok && v.Known()
		}
		switch {
		case !pitch.Known():
			c.Missing(row, "taken-length", Plain, Always, "the pitch of the units")
			c.Missing(row, "side-gap", Plain, Always, "the pitch of the units")
		case !ok:
			c.Missing(row, "taken-length", Plain, Always, "the width of each unit of "+row.Label())
			c.Missing(row, "side-gap", Plain, Always, "the width of each unit of "+row.Label())
		default:
			in := c.Inputs(Input{Name: "pitch", Num: pitch.Num, Dim: lang.Length}, Input{Name: "width", Num: wide, Dim: lang.Length})
			c.Add(Quantity{Part: row, Name: "taken-length", Num: float64(len(row.Refs("units"))-1)*pitch.Num + wide, Dim: lang.Length, Formula: &FormulaRowLength, Inputs: in})
			if len(row.Refs("units")) > 1 {
				c.Add(Quantity{Part: row, Name: "side-gap", Num: pitch.Num - wide, Dim: lang.Length, Formula: &FormulaSideGap, Inputs: in})
			}
		}
	}
}

// floorValues computes the load on the floor with everything filled.
func floorValues(c *Context, f *plant.Part) {
	floor := c.P.Block("room").Child("floor")
	wet, needs := wetMass(c.P, f)
	depth, length := f.Child("depth").First(), c.Get(f, "length", Always)
	switch {
	case needs != "":
	case !depth.Known():
		needs = "the depth of " + f.Label() + " over its feet (depth)"
	case !length.Known():
		needs = "the length of the sections of " + f.Label()
	}
	if needs != "" {
		c.Missing(floor, "floor-load", Plain, Always, needs)
		c.Missing(f, "foot-load", Most, Always, needs)
		return
	}
	c.Add(Quantity{Part: f, Name: "wet-mass", Num: wet, Dim: lang.Mass, Formula: &FormulaWetMass})
	area := length.Num * depth.Num
	in := c.Inputs(Input{Name: "M", Num: wet, Dim: lang.Mass}, Input{Name: "length", Num: length.Num, Dim: lang.Length}, Input{Name: "depth", Num: depth.Num, Dim: lang.Length})
	if q, err := stability.FloorLoad(wet, area); err == nil {
		c.Add(Quantity{Part: floor, Name: "floor-load", Num: q * 1000, Dim: lang.Pressure, Unit: "kN/m2", Formula: &FormulaFloorLoad, Inputs: in})
	} else {
		c.Missing(floor, "floor-load", Plain, Always, "a frame that the sum covers: "+err.Error())
	}
	feet := f.Child("feet").First()
	states, needs := BuildStates(c.P, f)
	switch {
	case needs != "":
		c.Missing(f, "foot-load", Most, Always, needs)
	case !feet.Known() || feet.Num < 4:
		c.Missing(f, "foot-load", Most, Always, "the feet of "+f.Label()+", four or more")
	default:
		last := states[len(states)-1]
		share := math.Max(last.Frame.Offset, depth.Num-last.Frame.Offset) / depth.Num
		c.Add(Quantity{Part: f, Name: "foot-load", Stat: Most, Num: wet * stability.Gravity * share / (feet.Num / 2), Dim: lang.Force, Unit: "kN", Formula: &FormulaFootLoad, Inputs: c.Inputs(in[0], Input{Name: "share", Num: share, Dim: lang.Ratio}, Input{Name: "feet", Num: feet.Num, Dim: lang.Count}), At: f.Child("feet").Span()})
	}
}

// wetMass is the frame with its units and the water in them.
func wetMass(p *plant.Plant, f *plant.Part) (mass float64, needs string) {
	own := f.Child("mass").Get("mass")
	if !own.Known() {
		return 0, "the mass of " + f.Label()
	}
	mass = own.Num
	for _, row := range f.Children("row") {
		for _, ref := range row.Refs("units") {
			m, w := ref.Part.Child("mass"), ref.Part.Child("water-content").First()
			if !m.Get("mass").Known() {
				return 0, "the mass of " + ref.Part.Label()
			}
			mass += m.Get("mass").Num
			if m.Get("state").Is("wet") {
				continue
			}
			if !w.Known() {
				return 0, "the water content of " + ref.Part.Label()
			}
			mass += w.Num * waterDensity
		}
	}
	for _, part := range blockParts(p.Block("headers")) {
		if part.Kind != "header" && part.Kind != "branch" {
			continue
		}
		size, length := part.Get("size"), part.Get("length")
		if !size.Known() || !length.Known() {
			return 0, "the size and length of " + part.Label()
		}
		t := pipe.Find(part.Get("material").Word, size.Num)
		if t == nil {
			return 0, "a pipe of the tables for " + part.Label()
		}
		mass += t.Content() * length.Num * waterDensity
	}
	return mass, ""
}

package solve

import (
	"math"
	"slices"

	"example.org/tundish/check/calc/pipe"
	"example.org/tundish/check/calc/stability"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// Formulas of the frame.
var (
	FormulaFrameMass   = Formula{Text: "frame with headers + units hung so far, empty of water; the frame's own mass lies evenly over its length and depth", Source: stability.SourceStatics}
	FormulaFrameCenter = Formula{Text: "x = sum(m x)/sum(m) from the weakest line of tipping; h = sum(m h)/sum(m)", Source: stability.SourceStatics}
	FormulaTipAngle    = Formula{Text: "angle = atan(x/h)", Source: stability.SourceStatics}
	FormulaTipForce    = Formula{Text: "F = M g x/z at the top of the frame; below 0 it must be held back", Source: stability.SourceStatics}
	FormulaFrameLength = Formula{Text: "sum of the sections of one arm", Source: stability.SourceStatics}
	FormulaWetMass     = Formula{Text: "frame with headers + units + water of units, headers and branches", Source: stability.SourceStatics}
	FormulaFloorLoad   = Formula{Text: "q = M g/(length x depth)", Source: stability.SourceStatics}
	FormulaFootLoad    = Formula{Text: "F = M g (share of the heavier line of feet)/(feet of one line)", Source: stability.SourceStatics}
	FormulaRowLength   = Formula{Text: "(units - 1) pitch + width of a unit", Source: stability.SourceStatics}
	FormulaSideGap     = Formula{Text: "pitch - width of a unit", Source: stability.SourceStatics}
	FormulaArmLength   = Formula{Text: "sum of the straight sections under the row", Source: stability.SourceStatics}
	FormulaUneven      = Formula{Text: "greatest difference of the units hung on the two sides, over every state", Source: stability.SourceStatics}
)

// BuildState is the frame at one moment of its building.
type BuildState struct {
	Stage BuildStage
	Unit  *plant.Part     // the unit hung last; nil for the empty frame
	Frame stability.Frame // Offset is from the weakest line of tipping
	Angle float64         // degrees; below 0 it tips by itself
	Force float64         // N at the top of the frame
	Floor float64         // N/m2 on the floor under the frame; 0 where it is not known
	Held  bool            // tied or anchored in this state
	Bound bool            // the center is nowhere higher than Frame.Height: the angle is at least this
	Sides [2]int          // units hung on each side
}

// BuildStage is how far the building of a frame has come.
type BuildStage uint8

// The stages of a frame.
const (
	BareFrame   BuildStage = iota // the sections alone, before headers
	EmptyFrame                    // with its headers, no unit
	HungUnit                      // after one more unit
	FilledFrame                   // with every unit and full of water
)

// load is a mass of the frame: its own, or that of a unit.
type load struct {
	unit   *plant.Part // nil: of the frame itself
	mass   float64     // kg
	height float64     // m
}

// frameCase is what the states of one frame are computed from.
type frameCase struct {
	f       *plant.Part
	grounds []ground
	top     float64 // m
	area    float64 // m2; 0 where it is not known
	held    bool
}

func newFrameCase(f *plant.Part) (c frameCase, needs string) {
	depth, height, offset := f.Child("depth").First(), f.Child("height").First(), f.Child("offset").First()
	switch {
	case !depth.Known():
		return c, "the depth of " + f.Label() + " over its feet (depth)"
	case !height.Known():
		return c, "the height of " + f.Label()
	case !offset.Known():
		return c, "the distance of the units from the line of feet (offset)"
	}
	c = frameCase{f: f, top: height.Num, held: HeldBefore(f)}
	if length, unknown := frameLength(f); unknown == "" {
		c.area = length * depth.Num
	}
	c.grounds, needs = grounds(f, depth.Num, offset.Num)
	return c, needs
}

// state is the worst that the grounds allow for these masses.
func (c *frameCase) state(loads []load, stage BuildStage) (worst BuildState, needs string) {
	var room [2][16]stability.Mass // frames with more units are rare
	for i := range c.grounds {
		g := &c.grounds[i]
		x, y := room[0][:0], room[1][:0]
		for _, l := range loads {
			at := g.own
			if l.unit != nil {
				at = g.at[l.unit]
			}
			x = append(x, stability.Mass{Mass: l.mass, Offset: at.X, Height: l.height})
			y = append(y, stability.Mass{Mass: l.mass, Offset: at.Y, Height: l.height})
		}
		across, err := stability.Sum(x)
		if err != nil {
			return worst, "a frame that the sum covers: " + err.Error()
		}
		fr, err := stability.Sum(y)
		if err != nil {
			return worst, "a frame that the sum covers: " + err.Error()
		}
		fr.Offset = g.weakest(stability.Point{X: across.Offset, Y: fr.Offset})
		if i > 0 && fr.Offset >= worst.Frame.Offset {
			continue
		}
		s := BuildState{Stage: stage, Frame: fr, Held: c.held}
		if s.Angle, err = fr.TipAngle(); err == nil {
			s.Force, err = fr.TipForce(c.top)
		}
		if err != nil {
			return worst, "a frame that the sum covers: " + err.Error()
		}
		if c.area > 0 {
			if q, err := stability.FloorLoad(fr.Mass, c.area); err == nil {
				s.Floor = q * 1000
			}
		}
		worst = s
	}
	return worst, ""
}

// BuildStates gives the states of a frame in its hang order, the empty frame
// first. needs says what is not stated; then there are no states.
func BuildStates(f *plant.Part) (states []BuildState, needs string) {
	_, _, states, needs = hangStates(f)
	return states, needs
}

func hangStates(f *plant.Part) (c frameCase, loads []load, states []BuildState, needs string) {
	mass, at := f.Child("mass").Get("mass"), f.Child("mass").Get("at")
	hang, order := f.Child("hang-height").First(), f.Child("hang-order").Refs("units")
	c, needs = newFrameCase(f)
	switch {
	case !mass.Known() || !at.Known():
		needs = "the mass of " + f.Label() + " and the height of its center of gravity (mass ... at)"
	case needs != "":
	case !hang.Known():
		needs = "the height of the units' center of gravity (hang-height)"
	case len(order) == 0:
		needs = "the order in which units are hung (hang-order)"
	}
	if needs != "" {
		return c, nil, nil, needs
	}
	loads = []load{{mass: mass.Num, height: at.Num}}
	s, needs := c.state(loads, EmptyFrame)
	if needs != "" {
		return c, nil, nil, needs
	}
	states = append(states, s)
	var hung plant.PartSet
	sides, n := rowSides(f), [2]int{}
	loads, states = slices.Grow(loads, len(order)+1), slices.Grow(states, len(order))
	for _, ref := range order {
		u := ref.Part
		m := u.Child("mass").Get("mass")
		side, ok := sides[u]
		switch {
		case !m.Known():
			return c, nil, nil, "the mass of " + u.Label()
		case !ok:
			return c, nil, nil, "the row in which " + u.Label() + " hangs"
		case hung.Has(u):
			return c, nil, nil, "a hang order that names " + u.Label() + " once"
		}
		hung.Add(u)
		loads = append(loads, load{u, m.Num, hang.Num})
		n[side]++
		s, needs := c.state(loads, HungUnit)
		if needs != "" {
			return c, nil, nil, needs
		}
		s.Unit, s.Sides = u, n
		states = append(states, s)
	}
	return c, loads, states, ""
}

// BareState is the frame of sections alone, before its headers: its center lies
// in the middle and nowhere higher than its top, so the angle is at least what
// that gives.
func BareState(f *plant.Part) (s BuildState, needs string) {
	c, needs := newFrameCase(f)
	if needs != "" {
		return s, needs
	}
	mass := 0.0
	for _, sec := range f.Children("section") {
		m := sec.Get("mass")
		if !m.Known() {
			return s, "the mass of " + sec.Label() + " (section ... mass); the mass of the frame is stated with its headers"
		}
		mass += m.Num
	}
	if mass == 0 {
		return s, "the sections of " + f.Label()
	}
	s, needs = c.state([]load{{mass: mass, height: c.top}}, BareFrame)
	s.Bound, s.Held = true, false // it is fixed only after it stands level
	return s, needs
}

// FilledState is the frame with every unit, full of water. The water of the
// headers is taken as high as the top of the frame, so the angle is at least
// what that gives.
func FilledState(p *plant.Plant, f *plant.Part) (s BuildState, needs string) {
	c, loads, states, needs := hangStates(f)
	if needs != "" {
		return s, needs
	}
	wet, needs := wetMass(p, f)
	switch {
	case needs != "":
		return s, needs
	case len(loads)-1 < len(rowSides(f)):
		return s, "a hang order that names every unit of " + f.Label()
	}
	dry := 0.0
	for i := range loads {
		dry += loads[i].mass
		if u := loads[i].unit; u != nil && !u.Child("mass").Get("state").Is("wet") {
			w := u.Child("water-content").First().Num * waterDensity // known: the sum of the wet mass has it
			loads[i].mass += w
			dry += w
		}
	}
	if wet > dry {
		loads = append(loads, load{mass: wet - dry, height: c.top})
	}
	s, needs = c.state(loads, FilledFrame)
	s.Bound, s.Sides = true, states[len(states)-1].Sides
	return s, needs
}

// HeldBefore tells a frame that is tied or anchored before the first unit.
func HeldBefore(f *plant.Part) bool {
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
		fc, loads, states, needs := hangStates(f)
		buildValues(c, f, states, needs)
		unevenUnits(c, f)
		rowValues(c, f)
		floorValues(c, f, &fc, loads, needs)
	}
}

func buildValues(c *Context, f *plant.Part, states []BuildState, needs string) {
	if needs != "" {
		c.Missing(f, "tip-angle", Least, Always, needs)
		return
	}
	worst, free := 0, -1
	for i, s := range states {
		if s.Angle < states[worst].Angle {
			worst = i
		}
		if !s.Held && (free < 0 || s.Angle < states[free].Angle) {
			free = i
		}
		if s.Unit != nil {
			stateValues(c, s.Unit, "hung-", s)
		}
	}
	leastAngle(c, f, "tip-angle", &states[worst])
	if free >= 0 {
		leastAngle(c, f, "free-tip-angle", &states[free])
	}
	stateValues(c, f, "", states[len(states)-1])
}

// unevenUnits stores by how many units one side of a frame leads the other at
// most; the hang order and the rows tell that without any mass.
func unevenUnits(c *Context, f *plant.Part) {
	layout := f.Get("layout")
	if !layout.Is("back-to-back") && !layout.Open() {
		return
	}
	order, sides := f.Child("hang-order").Refs("units"), rowSides(f)
	needs := ""
	if layout.Open() {
		needs = "the layout of " + f.Label() + " (in-line or back-to-back)"
	}
	if len(order) == 0 {
		needs = "the order in which units are hung (hang-order)"
	}
	var hung plant.PartSet
	ahead, uneven := 0, 0
	for _, ref := range order {
		side, ok := sides[ref.Part]
		switch {
		case !ok:
			needs = "the row in which " + ref.Part.Label() + " hangs"
		case hung.Has(ref.Part):
			needs = "a hang order that names " + ref.Part.Label() + " once"
		}
		hung.Add(ref.Part)
		ahead += 1 - 2*side
		uneven = max(uneven, ahead, -ahead)
	}
	if needs != "" {
		c.Missing(f, "uneven-units", Most, Always, needs)
		return
	}
	c.Add(Quantity{Part: f, Name: "uneven-units", Stat: Most, Num: float64(uneven), Dim: lang.Count, Formula: &FormulaUneven, At: f.Child("hang-order").Span()})
}

// leastAngle stores the worst of some states at the frame, with the state.
func leastAngle(c *Context, f *plant.Part, name string, s *BuildState) {
	at := "the frame is empty"
	if s.Unit != nil {
		at = "after " + s.Unit.Label() + " is hung"
	}
	in := c.Inputs(Input{Name: "x", Num: s.Frame.Offset, Dim: lang.Length}, Input{Name: "h", Num: s.Frame.Height, Dim: lang.Length}, Input{Name: "state", Text: at})
	c.Add(Quantity{Part: f, Name: name, Stat: Least, Num: s.Angle * math.Pi / 180, Dim: lang.Angle, Unit: "deg", Formula: &FormulaTipAngle, Inputs: in})
}

// stateValues stores one state of building at a unit or, for the last, the frame.
func stateValues(c *Context, at *plant.Part, prefix string, s BuildState) {
	in := c.Inputs(Input{Name: "M", Num: s.Frame.Mass, Dim: lang.Mass}, Input{Name: "x", Num: s.Frame.Offset, Dim: lang.Length}, Input{Name: "h", Num: s.Frame.Height, Dim: lang.Length})
	c.Add(Quantity{Part: at, Name: prefix + "frame-mass", Num: s.Frame.Mass, Dim: lang.Mass, Formula: &FormulaFrameMass})
	c.Add(Quantity{Part: at, Name: prefix + "center-offset", Num: s.Frame.Offset, Dim: lang.Length, Formula: &FormulaFrameCenter})
	c.Add(Quantity{Part: at, Name: prefix + "center-height", Num: s.Frame.Height, Dim: lang.Length, Formula: &FormulaFrameCenter})
	c.Add(Quantity{Part: at, Name: prefix + "tip-angle", Num: s.Angle * math.Pi / 180, Dim: lang.Angle, Unit: "deg", Formula: &FormulaTipAngle, Inputs: in[1:]})
	if prefix != "" && s.Floor > 0 {
		c.Add(Quantity{Part: at, Name: prefix + "floor-load", Num: s.Floor, Dim: lang.Pressure, Unit: floorUnit(c.P), Formula: &FormulaFloorLoad})
	}
	c.Add(Quantity{Part: at, Name: prefix + "tip-force", Num: s.Force, Dim: lang.Force, Formula: &FormulaTipForce, Inputs: in[:2]})
}

// rowValues computes the length of the frame and what its rows take of it.
func rowValues(c *Context, f *plant.Part) {
	rows := f.Children("row")
	length, needs := frameLength(f)
	if needs != "" {
		c.Missing(f, "length", Plain, Always, needs)
	} else {
		c.Add(Quantity{Part: f, Name: "length", Num: length, Dim: lang.Length, Formula: &FormulaFrameLength})
	}
	armLengths(c, f, length, needs)
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

// armLengths stores the length of frame that each row has.
func armLengths(c *Context, f *plant.Part, length float64, needs string) {
	rows := f.Children("row")
	if f.Get("layout").Is("l-shaped") {
		arms, _, unknown := cornerArms(f)
		for i, row := range rows {
			if unknown != "" || i > 1 {
				c.Missing(row, "arm-length", Plain, Always, unknown)
				continue
			}
			c.Add(Quantity{Part: row, Name: "arm-length", Num: arms[i].length, Dim: lang.Length, Formula: &FormulaArmLength})
		}
		return
	}
	for _, row := range rows {
		if needs != "" {
			c.Missing(row, "arm-length", Plain, Always, needs)
		} else {
			c.Add(Quantity{Part: row, Name: "arm-length", Num: length, Dim: lang.Length, Formula: &FormulaArmLength})
		}
	}
}

// floorValues computes the load on the floor with everything filled.
func floorValues(c *Context, f *plant.Part, fc *frameCase, loads []load, unhung string) {
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
		c.Add(Quantity{Part: floor, Name: "floor-load", Num: q * 1000, Dim: lang.Pressure, Unit: floorUnit(c.P), Formula: &FormulaFloorLoad, Inputs: in})
	} else {
		c.Missing(floor, "floor-load", Plain, Always, "a frame that the sum covers: "+err.Error())
	}
	feet := f.Child("feet").First()
	switch {
	case unhung == "" && f.Get("layout").Is("l-shaped"):
		c.Missing(f, "foot-load", Most, Always, "a layout whose feet stand in two lines (in-line or back-to-back)")
	case unhung != "":
		c.Missing(f, "foot-load", Most, Always, unhung)
	case !feet.Known() || feet.Num < 4:
		c.Missing(f, "foot-load", Most, Always, "the feet of "+f.Label()+", four or more")
	default:
		across := fc.across(loads)
		share := math.Max(across, depth.Num-across) / depth.Num
		c.Add(Quantity{Part: f, Name: "foot-load", Stat: Most, Num: wet * stability.Gravity * share / (feet.Num / 2), Dim: lang.Force, Unit: "kN", Formula: &FormulaFootLoad, Inputs: c.Inputs(in[0], Input{Name: "share", Num: share, Dim: lang.Ratio}, Input{Name: "feet", Num: feet.Num, Dim: lang.Count}), At: f.Child("feet").Span()})
	}
}

// across is the distance in m of the center of gravity from the front line of
// feet, where the feet stand in two lines.
func (c *frameCase) across(loads []load) float64 {
	mass, moment := 0.0, 0.0
	for _, l := range loads {
		y := c.grounds[0].own.Y
		if l.unit != nil {
			y = c.grounds[0].at[l.unit].Y
		}
		mass += l.mass
		moment += l.mass * y
	}
	return moment / mass
}

// floorUnit is how loads by area are written.
func floorUnit(p *plant.Plant) string {
	if p.US() {
		return "psf"
	}
	return "kN/m2"
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

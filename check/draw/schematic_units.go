package draw

import "example.org/tundish/check/plant"

// unit draws one heat generator with its gas drop, flue connector, branches and
// condensate outlet.
func (s *schematic) unit(u *plant.Part, x float64) {
	s.sym("unit", u, x, unitY, 0)
	name := u.Label() + s.signs(u)
	if w := TextWidth(name, labelSize, true); w <= 2*unitHalf-8 {
		s.text(x-w/2, unitY-unitHalf+16, labelSize, true, Anchor(u.Address()), name)
	} else {
		s.label(around(x, unitY, 2*unitHalf, 2*unitHalf), u, []side{right, left, above})
	}
	s.unitGas(u, x-portOffset)
	s.unitFlue(u, x+portOffset)
	s.unitFlow(u, x-portOffset)
	s.unitReturn(u, x+portOffset)
	s.unitDrain(u, x)
	if r := u.Child("relief"); r != nil && !r.First().Absent() {
		rx, ry := x+unitHalf+12, unitY+8
		s.thin("", point{x + unitHalf, ry + 14}, point{rx, ry + 14}, point{rx, ry + 8})
		s.sym("relief", r, rx, ry, 0)
	}
}

func (s *schematic) unitGas(u *plant.Part, x float64) {
	drop := linked(s.p.Block("gas-run"), "drop", "to", u)
	top := unitY - unitHalf
	if drop == nil {
		s.label(around(x, top-14, 4, 4), nil, []side{left, right}, "no gas drop")
		return
	}
	s.pipe(drop, gasLine, point{x, gasY}, point{x, top})
	s.dot(x, gasY)
	if v := u.Child("gas-valve"); v != nil && !v.First().Absent() {
		s.sym("valve", v, x, top-26, 90)
	}
	s.label(around(x, gasY+26, 4, 26), drop, []side{left, right}, asWritten(drop.Get("size")))
}

func (s *schematic) unitFlue(u *plant.Part, x float64) {
	con, header := s.connector(u)
	top := unitY - unitHalf
	if con == nil {
		s.label(around(x, top-14, 4, 4), nil, []side{right, left}, "no flue")
		return
	}
	s.pipe(con, flueLine, point{x, top}, point{x, flueY})
	if header != nil {
		s.dot(x, flueY)
	}
	if d := u.Child("damper"); d != nil && !d.First().Absent() {
		s.sym("damper", d, x, top-26, -90)
	}
	s.label(around(x, (flueY+gasY)/2, 4, 30), con, []side{right, left}, asWritten(con.Get("size")))
}

func (s *schematic) connector(u *plant.Part) (con, header *plant.Part) {
	for _, f := range s.p.ByKind("flue") {
		if c := linked(f, "connector", "from", u); c != nil {
			return c, f.Child("flue-header")
		}
	}
	return nil, nil
}

// inBranch draws parts one under the other in a vertical branch.
func (s *schematic) inBranch(x, y float64, turn int, parts ...inline) {
	for _, p := range parts {
		if p.part == nil {
			continue
		}
		s.sym(p.name, p.part, x, y, turn)
		y += 30
	}
}

type inline struct {
	name string
	part *plant.Part
}

// has is the child where it is stated and not stated as none.
func has(u *plant.Part, kind string) *plant.Part {
	c := u.Child(kind)
	if c == nil || c.First().Absent() {
		return nil
	}
	return c
}

func onSide(u *plant.Part, kind, slot, side string) *plant.Part {
	for _, c := range u.Children(kind) {
		for v := range c.List(slot) {
			if v.Is(side) {
				return c
			}
		}
	}
	return nil
}

func (s *schematic) unitFlow(u *plant.Part, x float64) {
	br := s.branch(u, "from")
	if br == nil || s.flow == nil {
		s.label(around(x, unitY+unitHalf+14, 4, 4), nil, []side{left, below}, "no flow branch")
		return
	}
	s.pipe(br, flowLine, point{x, unitY + unitHalf}, point{x, flowY})
	s.dot(x, flowY)
	var check *plant.Part
	if pump := has(u, "pump"); pump.Has("non-return") {
		check = pump
	}
	s.inBranch(x, drainY+30, 90, inline{"check", check}, inline{"valve", onSide(u, "water-valve", "sides", "flow")})
	s.label(around(x, flowY-34, 4, 20), br, []side{left, right}, asWritten(br.Get("size")))
}

func (s *schematic) unitReturn(u *plant.Part, x float64) {
	br := s.branch(u, "to")
	if br == nil || s.ret == nil {
		s.label(around(x, unitY+unitHalf+14, 4, 4), nil, []side{right, below}, "no return branch")
		return
	}
	s.pipe(br, returnLine, point{x, unitY + unitHalf}, point{x, returnY})
	s.dot(x, returnY)
	var strainer *plant.Part
	if st := has(u, "strainer"); st != nil && !st.Get("side").Is("flow") {
		strainer = st
	}
	s.inBranch(x, drainY+30, -90, inline{"pump", has(u, "pump")}, inline{"strainer", strainer}, inline{"valve", onSide(u, "water-valve", "sides", "return")})
	s.label(around(x, (flowY+returnY)/2, 4, 20), br, []side{right, left}, asWritten(br.Get("size")))
}

func (s *schematic) unitDrain(u *plant.Part, x float64) {
	trap := has(u, "trap")
	if trap == nil {
		s.label(around(x, unitY+unitHalf+12, 4, 4), nil, []side{below, right}, "no trap")
		return
	}
	y := unitY + unitHalf
	s.pipe(trap, condensateLine, point{x, y}, point{x, drainY})
	s.sym("trap", trap, x, y+19, 0)
	if s.condensateMain() != nil {
		s.dot(x, drainY)
	}
}

package draw

import "example.org/tundish/check/plant"

// headers draws flow and return with what stands on them and the pipes that
// lead away.
func (s *schematic) headers() {
	block := s.p.Block("headers")
	if block == nil || len(s.x) == 0 {
		return
	}
	x0, x1 := s.x[0]-portOffset-66, s.right-8
	if s.flow != nil {
		s.pipe(s.flow, flowLine, point{x0, flowY}, point{x1, flowY})
		s.tag(flowLine, x0-12, flowY)
		s.label(around(x0+32, flowY, 44, 6), s.flow, []side{above, below, left}, asWritten(s.flow.Get("size")))
		s.ends(block, s.flow, x0, flowY, 1)
	}
	if s.ret != nil {
		s.pipe(s.ret, returnLine, point{x0, returnY}, point{x1, returnY})
		s.tag(returnLine, x0-12, returnY)
		s.label(around(x0+32, returnY, 44, 6), s.ret, []side{below, above, left}, asWritten(s.ret.Get("size")))
		s.ends(block, s.ret, x0, returnY, 1)
	}
}

// plantPipes are the pipes of the headers block in one direction.
func (s *schematic) plantPipes(header *plant.Part, slot, other string) []*plant.Part {
	var out []*plant.Part
	block := s.p.Block("headers")
	if block == nil || header == nil {
		return nil
	}
	for _, p := range block.Children("pipe") {
		if refersTo(p, slot, header) {
			out = append(out, p)
			for at := p; at != nil; { // further pieces in the same line
				var next *plant.Part
				for _, q := range block.Children("pipe") {
					if q != at && (refersTo(q, slot, at) || refersTo(at, other, q)) && !contains(out, q) {
						next = q
					}
				}
				if next != nil {
					out = append(out, next)
				}
				at = next
			}
		}
	}
	return out
}

func contains(list []*plant.Part, p *plant.Part) bool {
	for _, q := range list {
		if q == p {
			return true
		}
	}
	return false
}

// beyond draws the common pipes, the separation and the building's circuits.
func (s *schematic) beyond() {
	if len(s.x) == 0 {
		return
	}
	sep, name := s.p.One("exchanger"), "exchanger"
	if sep == nil || sep.Owner == nil || sep.Owner.Kind != "separation" {
		sep, name = s.p.One("separator"), "separator"
	}
	flowPipes, retPipes := s.plantPipes(s.flow, "from", "to"), s.plantPipes(s.ret, "to", "from")
	x := s.right - 8
	end := s.common(flowPipes, flowLine, x, flowY, false)
	end = max(end, s.common(retPipes, returnLine, x, returnY, true))
	s.stretch(flowPipes, flowLine, x, end, flowY)
	s.stretch(retPipes, returnLine, x, end, returnY)
	half := symbols[name].w / 2
	xs := end + half
	if sep != nil {
		b := s.sym(name, sep, xs, (flowY+returnY)/2, 0)
		s.label(b, sep, []side{above, below}, first1(asWritten(sep.Get("type")), asWritten(sep.Get("body"))))
	}
	s.circuits(xs + half)
}

func first1(a, b string) string {
	if a != "" {
		return a
	}
	return b
}

// common measures the room that the parts in the common pipes need and draws
// them, each in its own place.
func (s *schematic) common(pipes []*plant.Part, _ service, x, y float64, back bool) float64 {
	at := x + 40
	for _, p := range pipes {
		s.label(around(at, y, 40, 8), p, []side{above, below}, asWritten(p.Get("size")))
		at += 62
		for _, c := range s.on(p) {
			turn := 0
			if back {
				turn = 180
			}
			b := s.sym(waterSymbol(c.Kind), c, at, y, turn)
			kind := ""
			if c.Name == "" {
				kind = c.Kind
			}
			if kind != "" {
				s.label(b, nil, []side{below, above}, kind)
			} else {
				s.label(b, c, []side{below, above})
			}
			at += 62
		}
	}
	return at
}

// stretch draws the line of the common pipes; each takes an equal part of it.
func (s *schematic) stretch(pipes []*plant.Part, sv service, x, end, y float64) {
	if len(pipes) == 0 {
		s.label(around(x+10, y, 10, 4), nil, []side{right, below}, "no pipe to the "+services[sv].says)
		return
	}
	each := (end - x) / float64(len(pipes))
	for i, p := range pipes {
		s.pipe(p, sv, point{x + float64(i)*each, y}, point{x + float64(i+1)*each, y})
	}
}

// on lists what the text puts into a pipe.
func (s *schematic) on(pipe *plant.Part) []*plant.Part {
	var out []*plant.Part
	for _, c := range s.p.All {
		if waterSymbol(c.Kind) != "" && refersTo(c, "on", pipe) {
			out = append(out, c)
		}
	}
	return out
}

func waterSymbol(kind string) string {
	switch kind {
	case "strainer":
		return "strainer"
	case "filter":
		return "filter"
	case "air-separator":
		return "vent"
	case "water-valve":
		return "valve"
	case "plant-pump":
		return "pump"
	}
	return ""
}

// circuits draws the secondary side: the pipe to the circuits and each of them.
func (s *schematic) circuits(x float64) {
	sec := s.p.Block("secondary")
	if sec == nil {
		return
	}
	list := sec.Children("circuit")
	pipes := sec.Children("pipe")
	sp := 54.0
	riser := x + 90
	if len(pipes) > 0 {
		riser += 62 * float64(len(s.on(pipes[0])))
	}
	y0, y1 := flowY, returnY
	if len(pipes) > 0 {
		s.pipe(pipes[0], flowLine, point{x, y0}, point{riser, y0})
		s.label(around(x+40, y0, 40, 8), pipes[0], []side{above, below}, asWritten(pipes[0].Get("size")))
		for i, c := range s.on(pipes[0]) {
			s.label(s.sym(waterSymbol(c.Kind), c, x+96+62*float64(i), y0, 0), c, []side{below, above})
		}
	} else {
		s.pipe(nil, flowLine, point{x, y0}, point{riser, y0})
	}
	s.pipe(nil, returnLine, point{x, y1}, point{riser + 26, y1})
	low := y1 - sp*float64(len(list)-1)
	for i, c := range list {
		y := low + sp*float64(i) - 30
		xs := riser + 70
		s.pipe(nil, flowLine, point{riser, y0}, point{riser, y - 6}, point{xs - 22, y - 6})
		s.pipe(nil, returnLine, point{riser + 26, y1}, point{riser + 26, y + 7}, point{xs - 22, y + 7})
		b := s.sym("load", c, xs, y, 0)
		s.label(b, c, []side{right, below}, asWritten(c.Get("flow")), asWritten(c.Get("temperatures")))
	}
}

// safety draws vessels and tundishes under the headers.
func (s *schematic) safety() {
	block := s.p.Block("safety")
	if block == nil {
		return
	}
	x := unitsLeft - portOffset
	for _, v := range block.Children("vessel") {
		b := s.sym("vessel", v, x, bottomY, 0)
		where := ""
		if ref, ok := v.Ref("on"); ok {
			where = "on " + ref.Part.Label()
			if ref.Part == s.ret {
				s.thin("", point{x, returnY}, point{x, bottomY - 22})
				s.dot(x, returnY)
				if v.Get("valve").Known() && !v.Get("valve").Is("no-valve") {
					s.sym("valve", nil, x, returnY+34, 90)
				}
			}
		}
		s.label(b, v, []side{right, below}, asWritten(v.Get("volume")), where)
		x += unitPitch
	}
	for _, r := range block.Children("relief") {
		s.named(r, "relief", &x, "on ", "on")
	}
	for _, t := range block.Children("tundish") {
		s.named(t, "tundish", &x, "to ", "drains-to")
	}
}

func (s *schematic) named(part *plant.Part, name string, x *float64, word, slot string) {
	b := s.sym(name, part, *x, bottomY, 0)
	where := ""
	if ref, ok := part.Ref(slot); ok {
		where = word + ref.Part.Label()
	}
	s.label(b, part, []side{right, below}, where)
	*x += unitPitch
}

package parts

import "example.org/tundish/check/plant"

// condensate counts drains, flue traps and the neutralizer. The traps of units
// are in the unit sets.
func condensate(c *counter) {
	b := c.p.Block("condensate")
	if b == nil {
		return
	}
	for _, p := range b.Parts {
		switch p.Stmt.Head.Keyword {
		case "pipe":
			if l := p.Get("length"); l.Known() {
				c.length(Condensate, material(p)+" drain pipe", c.size(p), l.Num, p, "measured length")
			} else {
				c.gap(p, "the length of "+p.Label())
			}
			for _, from := range p.Refs("from") {
				if from.Part.Kind == "unit" {
					c.off(Condensate, "drain entry", c.size(p), 1, p, "one for each unit")
				}
			}
			if p.Has("insulated") {
				c.length(Condensate, "drain insulation", c.size(p), p.Get("length").Num, p, "")
			}
		case "trap":
			c.off(Condensate, "flue trap", both("seal", c.text(p.Get("seal"))), 1, p, "")
		case "neutraliser":
			if !p.First().Absent() {
				c.off(Condensate, "neutralizer", c.text(p.Get("capacity")), 1, p, "")
			}
		case "pump":
			c.off(Condensate, "condensate pump", c.text(p.Get("capacity")), 1, p, "")
		}
	}
}

// air counts openings, fans, detectors and stops.
func air(c *counter) {
	b := c.p.Block("air")
	if b == nil {
		return
	}
	for _, p := range b.Parts {
		switch p.Stmt.Head.Keyword {
		case "opening":
			name := "ventilation opening"
			if k := p.Get("kind"); k.Known() {
				name = "ventilation " + k.Word
			}
			c.off(Air, name, both(c.text(p.Get("free")), "free"), 1, p, "")
		case "fan":
			c.off(Air, p.Get("kind").Word+" fan", c.text(p.Get("flow")), 1, p, "")
			if p.Has("proved") {
				c.off(Air, "air flow switch", "", 1, p, "proves the fan")
			}
		case "detector":
			c.off(Air, p.Get("gas").Word+" detector", "", 1, p, "")
			if p.Has("sounds") {
				c.off(Air, "sounder", "", 1, p, "outside the doors")
			}
		case "stop":
			c.off(Air, "emergency stop", "", 1, p, "")
		case "fire-alarm":
			c.off(Air, "fire alarm interface", "", 1, p, "")
		case "heat-detector":
			c.off(Air, "heat detector", c.text(p.Get("setting")), float64(len(p.Refs("over"))), p, "one over each unit")
		}
	}
}

// electrical counts panel, cables and sensors.
func electrical(c *counter) {
	b := c.p.Block("electrical")
	if b == nil {
		return
	}
	for _, p := range b.Parts {
		switch p.Stmt.Head.Keyword {
		case "panel":
			c.off(Electrical, "panel", both(c.text(p.Get("voltage")), c.text(p.Get("current"))), 1, p, "")
		case "wire":
			c.off(Electrical, "cable", wired(p), float64(max(1, len(p.Subjects()))), p, "cut to its route on site")
		case "bus":
			c.off(Electrical, "bus cable", p.Get("kind").Word, float64(max(1, len(p.Subjects())-1)), p, "from unit to unit, cut on site")
		case "sensor":
			c.off(Electrical, p.Get("measures").Word+" sensor", "", 1, p, "")
			if _, ok := p.Ref("on"); ok {
				c.off(Electrical, "sensor pocket", "", 1, p, "on the pipe")
			}
			if _, ok := p.Ref("to"); ok {
				c.off(Electrical, "cable", "sensor", 1, p, "cut to its route on site")
			}
		case "bonding":
			c.off(Electrical, "bonding clamp with conductor", "", float64(p.Count("what")), p, "one for each pipe")
		case "residual-current":
			c.off(Electrical, "residual current device", c.text(p.First()), 1, p, "")
		}
	}
}

func wired(w *plant.Part) string {
	for _, s := range w.Subjects() {
		if s.Part.Stmt != nil {
			return s.Part.Stmt.Head.Keyword
		}
	}
	return ""
}

// insulation counts cover by piece: pipe by its length, bends and other parts by
// number.
func insulation(c *counter) {
	b := c.p.Block("insulation")
	if b == nil {
		return
	}
	for _, cover := range b.Children("cover") {
		what := cover.Get("material").Word
		if what == "" {
			what = "unstated"
		}
		if cover.Has("removable") {
			what += ", removable"
		}
		thick := c.text(cover.Get("thickness"))
		for _, ref := range cover.Subjects() {
			p := ref.Part
			length := p.Get("length")
			if !p.Get("size").Known() || !pipeLike(p) {
				c.off(Insulation, what+" cover", both(thick, "for "+p.Label()), 1, cover, "")
				continue
			}
			size := both(thick, "on "+p.Get("size").Word)
			if !length.Known() {
				c.gap(cover, "the length of "+p.Label())
				continue
			}
			c.length(Insulation, what+" pipe section", size, length.Num, cover, "lengths of what it names")
			c.off(Insulation, what+" bend cover", size, stated(p, "bends")+stated(p, "half-bends"), cover, "bends of what it names")
		}
	}
}

func pipeLike(p *plant.Part) bool {
	switch p.Kind {
	case "pipe", "header", "branch", "drop", "manifold", "connector", "flue-header", "run", "riser", "condensate-pipe":
		return true
	}
	return false
}

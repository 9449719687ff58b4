package parts

import "example.org/tundish/check/plant"

// headers counts the flow and return headers with what belongs to them.
func headers(c *counter) {
	if h := c.p.Block("headers"); h != nil {
		waterBlock(c, Headers, h)
	}
}

// secondary counts the described pipes behind the separation. The circuits of
// the building themselves are not part of the plant.
func secondary(c *counter) {
	if s := c.p.Block("secondary"); s != nil {
		waterBlock(c, Secondary, s)
	}
}

func waterBlock(c *counter, pkg string, block *plant.Part) {
	for _, p := range block.Parts {
		switch p.Stmt.Head.Keyword {
		case "header":
			c.collector(pkg, "header", p, true)
		case "branch", "pipe":
			c.run(pkg, p, true)
		case "pump":
			c.off(pkg, "pump", p.Get("type").Word, count(p, "count"), p, "")
		case "separator", "exchanger":
			separator(c, p)
		case "old-circuits", "glycol", "circuit", "take-off", "content", "emitters", "spare":
		default:
			small(c, pkg, p)
		}
	}
}

// small counts what is screwed on or stands in a pipe.
func small(c *counter, pkg string, p *plant.Part) {
	on := float64(max(1, len(p.Refs("on"))))
	switch p.Stmt.Head.Keyword {
	case "blank":
		c.blank(pkg, p)
	case "vent":
		name := "air vent"
		if p.Has("automatic") {
			name = "automatic air vent"
		}
		c.off(pkg, name, c.size(p), on, p, "")
	case "drain-cock":
		c.off(pkg, "drain cock", c.size(p), on, p, "")
	case "strainer":
		c.inline(pkg, "strainer", p)
	case "air-separator":
		c.inline(pkg, "air separator", p)
	case "filter":
		name := "filter"
		if k := p.Get("kind"); k.Known() {
			name = k.Word + " filter"
		}
		c.inline(pkg, name, p)
	case "thermometer":
		c.off(pkg, "thermometer", "", on, p, "")
		c.off(pkg, "thermometer pocket", "", on, p, "one for each thermometer")
	case "pressure-gauge":
		c.off(pkg, "pressure gauge", gaugeSpan(p), on, p, "")
		if p.Has("test-cock") {
			c.off(pkg, "test cock", "", on, p, "at the pressure gauge")
		}
	case "cap":
		c.off(pkg, "cap", c.size(p), count(p, "count"), p, "spare connection")
		if p.Has("gasket") {
			c.off(pkg, "flat seal", c.size(p), count(p, "count"), p, "spare connection")
		}
	}
}

// separation counts exchangers and separators with the joints of their ports.
func separation(c *counter) {
	if s := c.p.Block("separation"); s != nil {
		waterBlock(c, Separation, s)
	}
}

func separator(c *counter, p *plant.Part) {
	size, name := p.Get("type").Word, "plate heat exchanger"
	if p.Kind == "separator" {
		size, name = p.Get("body").Word, "hydraulic separator"
	}
	c.off(Separation, name, size, 1, p, "")
	ports := port(p)
	switch {
	case !ports.Known():
		c.gap(p, "the size of the ports of "+p.Label())
	case c.isFlanged(ports):
		c.joint(Separation, ports, 4, p, "four ports")
		c.off(Separation, "flange", ports.Word, 4, p, "four ports")
	default:
		c.off(Separation, "flat seal", ports.Word, 4, p, "four ports")
	}
	if p.Has("vented") {
		c.off(Separation, "air vent", "", 1, p, "on top")
	}
	if p.Has("drained") {
		c.off(Separation, "drain cock", "", 1, p, "at the foot")
	}
	if p.Has("insulated") {
		c.off(Separation, "insulation of "+name, size, 1, p, "")
	}
}

// safety counts vessels, safety valves and their discharge.
func safety(c *counter) {
	s := c.p.Block("safety")
	if s == nil {
		return
	}
	for _, p := range s.Parts {
		switch p.Stmt.Head.Keyword {
		case "vessel":
			c.off(Safety, "expansion vessel", c.text(p.Get("volume")), 1, p, "")
			if v := p.Get("valve"); v.Known() && v.Word != "no-valve" {
				c.off(Safety, map[string]string{"lockable-valve": "lockable vessel valve", "plain-valve": "vessel valve", "cap-valve": "vessel cap valve"}[v.Word], "", 1, p, "")
			}
			if p.Has("drain") {
				c.off(Safety, "drain cock", "", 1, p, "at the vessel")
			}
		case "relief":
			c.off(Safety, "safety valve", both(c.size(p), c.text(p.Get("set-pressure"))), 1, p, "")
		case "discharge":
			s := c.size(p)
			if l := p.Get("length"); l.Known() {
				c.length(Safety, material(p)+" pipe", s, l.Num, p, "discharge pipe")
				c.supports(Safety, p, l.Num, 0, true)
			} else {
				c.gap(p, "the length of the discharge pipe")
			}
			c.off(Safety, material(p)+" bend", s, stated(p, "elbows"), p, "discharge pipe")
		case "tundish":
			c.off(Safety, "tundish", "", 1, p, "")
		case "pressurisation":
			c.off(Safety, "pressurisation set with its cut-outs", "", 1, p, "")
		case "mains-link":
			if v := p.Get("protection"); v.Known() {
				c.off(Safety, v.Word, "", 1, p, "between the mains and the plant")
			}
		case "low-water":
			c.off(Safety, "low-water cut-out", c.text(p.Get("setting")), 1, p, "")
		case "pressure-gauge", "cap":
			small(c, Safety, p)
		}
	}
}

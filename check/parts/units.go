package parts

import "example.org/tundish/check/plant"

// units counts each unit with its own set of valves, pump and safety devices.
func units(c *counter) {
	for _, u := range c.p.Units() {
		unitSet(c, u)
	}
}

func unitSet(c *counter, u *plant.Part) {
	add := func(name, size string, n float64, from *plant.Part, note string) {
		c.off(UnitSets, name, size, n, from, note)
	}
	typ := u.Child("type")
	name := typ.First().Word
	if name == "" {
		name = c.text(u.Child("output").First())
	}
	at := typ
	if at == nil {
		at = u
	}
	add("unit", name, 1, at, "")
	if w := u.Child("water-connection").Get("size"); w.Known() {
		add("union", w.Word, 2, at, "water connections of a unit")
		add("flat seal", w.Word, 2, at, "water connections of a unit")
	} else {
		c.gap(u, "the size of the water connections of "+u.Label()+" (water-connection)")
	}
	if p := has(u, "pump"); p != nil {
		pump(c, p)
	}
	if v := has(u, "gas-valve"); v != nil {
		s := c.size(v)
		add("gas valve", s, 1, v, "")
		if v.Has("union") {
			add("gas union", s, 1, v, "")
		}
		if v.Has("test-point") {
			add("gas test point", "", 1, v, "")
		}
		if v.Has("flexible") {
			add("flexible gas connector", s, 1, v, "")
		}
		if v.Has("drip-leg") {
			add("drip leg", s, 1, v, "")
		}
	}
	if v := has(u, "water-valve"); v != nil {
		add("isolating valve", c.size(v), float64(v.Count("sides")), v, "flow and return as stated")
	}
	for _, d := range [...]struct{ kind, name string }{{"strainer", "strainer"}, {"drain-cock", "drain cock"}, {"vent", "air vent"}, {"damper", "flue damper"}} {
		if v := has(u, d.kind); v != nil {
			n := d.name
			if v.Has("automatic") {
				n = "automatic " + n
			}
			add(n, c.size(v), 1, v, "")
		}
	}
	if v := has(u, "thermometer"); v != nil {
		n := float64(v.Count("sides"))
		add("thermometer", "", n, v, "")
		add("thermometer pocket", "", n, v, "one for each thermometer")
	}
	if v := has(u, "pressure-gauge"); v != nil {
		add("pressure gauge", gaugeSpan(v), 1, v, "")
	}
	if v := has(u, "relief"); v != nil {
		add("safety valve", both(c.size(v), c.text(v.Get("set-pressure"))), 1, v, "")
	}
	for _, d := range [...]struct{ kind, name string }{{"low-water", "low-water cut-out"}, {"high-pressure", "high-pressure cut-out"}, {"limiter", "temperature limiter"}} {
		if v := has(u, d.kind); v != nil {
			add(d.name, c.text(v.Get("setting")), 1, v, "")
		}
	}
	if v := has(u, "trap"); v != nil {
		add("condensate trap", both("seal", c.text(v.Get("seal"))), 1, v, "")
	}
	if v := has(u, "cap"); v != nil {
		n := count(v, "count")
		add("cap", c.size(v), n, v, "spare connection")
		if v.Has("gasket") {
			add("flat seal", c.size(v), n, v, "spare connection")
		}
	}
	if v := u.Child("isolator"); v != nil && !v.First().Absent() {
		add("electrical isolator", "", 1, v, "")
	}
}

func pump(c *counter, p *plant.Part) {
	typ := p.Get("type")
	c.off(UnitSets, "pump", typ.Word, 1, p, "")
	size := p.Child("connection").Get("size").Word
	if size == "" {
		c.gap(p, "the size of the connections of the pump (connection in its type)")
		return
	}
	c.off(UnitSets, "flat seal", size, 2, p, "both sides of a pump")
	if p.Has("isolating") {
		c.off(UnitSets, "pump valve", size, 2, p, "both sides of a pump")
	}
	if p.Has("non-return") {
		c.off(UnitSets, "non-return valve", size, 1, p, "")
	}
	if p.Has("shut-off") {
		c.off(UnitSets, "motorized valve", size, 1, p, "")
	}
}

func gaugeSpan(g *plant.Part) string {
	v := g.Get("span")
	if !v.Known() {
		return ""
	}
	return "to " + written(v, v.Num2)
}

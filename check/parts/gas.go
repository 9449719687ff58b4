package parts

// gasRun counts what lies between the supply and the drops to the units.
func gasRun(c *counter) {
	g := c.p.Block("gas-run")
	if g == nil {
		return
	}
	for _, p := range g.Parts {
		switch kind := p.Stmt.Head.Keyword; kind {
		case "regulator":
			c.off(Gas, "gas regulator", c.text(p.Get("outlet")), 1, p, "")
			if p.Has("slam-shut") {
				c.off(Gas, "slam-shut valve", "", 1, p, "")
			}
		case "meter":
			c.off(Gas, "gas meter", c.text(p.Get("rating")), 1, p, "")
		case "booster":
			if !p.First().Absent() {
				c.off(Gas, "gas booster", c.text(p.Get("gain")), 1, p, "")
			}
		case "filter":
			c.inline(Gas, "gas filter", p)
		case "valve":
			name := "gas valve"
			if k := p.Get("kind"); k.Known() {
				name = k.Word + " gas valve"
			}
			if len(p.Refs("on")) > 0 {
				c.inline(Gas, name, p)
			} else {
				c.off(Gas, name, c.size(p), 1, p, "")
			}
		case "pipe", "drop":
			c.run(Gas, p, false)
		case "manifold":
			c.collector(Gas, "manifold", p, false)
		case "blank":
			c.blank(Gas, p)
		case "purge-point", "test-point", "drip-leg":
			n := max(1, len(p.Refs("on")))
			c.off(Gas, map[string]string{"purge-point": "purge point", "test-point": "gas test point", "drip-leg": "drip leg"}[kind], c.size(p), float64(n), p, "")
			if p.Has("plugged") {
				c.off(Gas, "plug", c.size(p), 1, p, "closes the purge point")
			}
			if p.Has("valved") {
				c.off(Gas, "gas valve", c.size(p), 1, p, "at the purge point")
			}
		case "sleeve":
			if p.Has("sealed") {
				c.off(Gas, "sleeve seal", "", 1, p, "one end of the sleeve")
			}
		}
	}
}

package parts

import (
	"math"

	"example.org/tundish/check/plant"
	"example.org/tundish/check/tables"
)

// flue counts the pieces of each flue with supports and seals.
func flue(c *counter) {
	for _, f := range c.p.ByKind("flue") {
		entries := map[*plant.Part][]*plant.Part{}
		for _, con := range f.Children("connector") {
			for _, to := range con.Refs("to") {
				entries[to.Part] = append(entries[to.Part], con)
			}
		}
		for _, p := range f.Parts {
			switch p.Stmt.Head.Keyword {
			case "connector", "header", "run", "riser":
				flueRun(c, f, p, entries[p])
			case "bend":
				c.off(Flue, flueMaterial(p)+" flue bend "+c.text(p.Get("angle")), c.size(p), count(p, "count"), p, "")
				c.off(Flue, "flue seal", c.size(p), count(p, "count"), p, "one for each piece")
				if p.Has("inspection") {
					c.off(Flue, "inspection opening", c.size(p), count(p, "count"), p, "in the bend")
				}
				if f.Child("support").Has("at-bends") {
					c.off(Flue, "flue support", c.size(p), count(p, "count"), p, "at each bend")
				}
			case "blank":
				c.off(Flue, "flue end cap", c.size(p), 1, p, "closes an end")
				c.off(Flue, "flue seal", c.size(p), 1, p, "closes an end")
			case "terminal":
				size := ""
				for _, r := range f.Parts {
					for _, to := range r.Refs("to") {
						if to.Part == p {
							size = r.Get("size").Word
						}
					}
				}
				name := "flue terminal"
				if v := p.Get("cap"); v.Known() {
					name += " " + v.Word
				}
				c.off(Flue, name, size, 1, p, "")
				if p.Has("guard") {
					c.off(Flue, "terminal guard", size, 1, p, "")
				}
			case "test-point":
				c.off(Flue, "flue test point", c.size(p), float64(max(1, len(p.Refs("on")))), p, "")
			case "lubricant":
				c.off(Flue, p.First().Word+" lubricant for seals", "", 1, p, "")
			}
		}
	}
}

// flueMaterial of a bend is that of the piece it is in.
func flueMaterial(p *plant.Part) string {
	if on, ok := p.Ref("on"); ok {
		p = on.Part
	}
	return material(p)
}

// flueRun counts one run: straight pieces, bends, entries and the drain, a seal
// for each piece, and supports.
func flueRun(c *counter, f, p *plant.Part, entries []*plant.Part) {
	mat, s, length := material(p), c.size(p), p.Get("length")
	if !length.Known() {
		c.gap(p, "the length of "+p.Label())
		return
	}
	most := tables.LimitOf("flue-piece-most").Num
	pieces := steps(length.Num, most)
	c.length(Flue, mat+" flue pipe", s, length.Num, p, "in "+plural(int(pieces), "piece"))
	bends := stated(p, "bends") + stated(p, "half-bends")
	c.off(Flue, mat+" flue bend 90 deg", s, stated(p, "bends"), p, "")
	c.off(Flue, mat+" flue bend 45 deg", s, stated(p, "half-bends"), p, "")
	for _, e := range entries {
		c.off(Flue, mat+" flue entry", both(s, "to "+e.Get("size").Word), 1, e, "on "+p.Label())
	}
	drains := 0.0
	for _, t := range c.p.ByKind("flue-trap") {
		for _, from := range t.Refs("from") {
			if from.Part == p {
				drains++
				c.off(Flue, mat+" flue drain piece", s, 1, t, "on "+p.Label())
			}
		}
	}
	c.off(Flue, "flue seal", s, pieces+bends+float64(len(entries))+drains, p, "one for each piece")
	if p.Kind == "connector" {
		n := 1.0 // where the first piece meets the unit or its damper
		if from, ok := p.Ref("from"); ok && has(from.Part, "damper") != nil {
			n = 2
		}
		c.off(Flue, "flue seal", s, n, p, "at the unit and its damper")
	}
	if p.Has("fire-stopped") {
		c.off(Flue, "fire stop", s, 1, p, "where it crosses a floor or wall")
	}
	if p.Has("sleeve") {
		c.off(Flue, "flue sleeve", s, 1, p, "where it crosses a floor or wall")
	}
	if p.Has("insulated") {
		c.length(Flue, "flue insulation", s, length.Num, p, "")
	}
	flueSupports(c, f, p, length.Num, bends)
}

// flueSupports counts one for each whole or begun spacing, one more on a
// header, and one at each bend where the flue says so. A run no longer than the
// spacing has one at its bend instead of a further one.
func flueSupports(c *counter, f, p *plant.Part, length, bends float64) {
	all := f.Child("support")
	step := p.Get("support")
	if !step.Known() {
		step = all.Get("spacing")
	}
	if !step.Known() {
		c.gap(p, "the spacing of the supports of "+p.Label()+" (support)")
		return
	}
	n := steps(length, step.Num)
	if !all.Has("at-bends") {
		bends = 0
	}
	switch {
	case length <= step.Num*(1+1e-9):
		n = math.Max(n, bends)
	default:
		n += bends
	}
	if p.Kind == "flue-header" {
		n++
	}
	c.off(Flue, "flue support", p.Get("size").Word, n, p, "by spacing and bends")
}

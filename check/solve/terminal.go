package solve

import (
	"example.org/tundish/check/calc/flue"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// Formulas of the terminal.
var (
	FormulaTerminalOpening  = Formula{Text: "room-sealed 7.232 mm/kW Q + 93.7 mm, open-flued 9.516 mm/kW Q + 833.9 mm, Q the net input of the grouped terminals, 70 to 333 kW", Source: flue.SourceTerminalUP10}
	FormulaTerminalFacing   = Formula{Text: "room-sealed 19.32 mm/kW Q + 647.6 mm, open-flued 23.13 mm/kW Q + 618.8 mm, 70 to 333 kW net", Source: flue.SourceTerminalUP10}
	FormulaTerminalRoof     = Formula{Text: "4.5675 mm/kW Q - 19.7 mm, 70 to 333 kW net", Source: flue.SourceTerminalUP10}
	FormulaTerminalSmall    = Formula{Text: "distances of fanned units up to 70 kW net", Source: flue.SourceTerminalADJ}
	FormulaTerminalUS       = Formula{Text: "mechanical draft: 4 ft below or beside an opening or 1 ft above it, 3 ft above a forced-air inlet within 10 ft, 1 ft above grade, 7 ft above a walkway, 4 ft from a meter or regulator", Source: flue.SourceTerminalUS}
	FormulaTerminalDirect   = Formula{Text: "direct vent above 50 000 Btu/h: 1 ft from an opening", Source: flue.SourceTerminalUSDirect}
	FormulaFlueInput        = Formula{Text: "sum of the net inputs of the units on the flue", Source: flue.SourceTerminalUP10}
	FormulaEquivalentLength = Formula{Text: "lengths of the pieces from the unit to the terminal, each bend counted as the unit's data say", Source: flue.SourceBalance}
)

// OnFlue lists the units whose connectors lead into a flue.
func OnFlue(fl *plant.Part) []*plant.Part {
	var out []*plant.Part
	var seen plant.PartSet
	for _, c := range fl.Children("connector") {
		for _, ref := range c.Refs("from") {
			if ref.Part.Kind == "unit" && !seen.Has(ref.Part) {
				seen.Add(ref.Part)
				out = append(out, ref.Part)
			}
		}
	}
	return out
}

// solveTerminals computes the least distances of each terminal, and the
// equivalent lengths that units limit.
func solveTerminals(c *Context) {
	for _, fl := range c.P.ByKind("flue") {
		units := OnFlue(fl)
		equivalentLengths(c, fl, units)
		t := fl.Child("terminal")
		if t == nil || len(units) == 0 {
			continue
		}
		input := c.Group(fl, "input-net", Total, Always)
		if !input.Known() {
			c.Missing(t, "net-input", Plain, Always, "the net input of every unit on "+fl.Label())
			continue
		}
		net := input.Num
		c.Add(Quantity{Part: t, Name: "net-input", Num: net, Dim: lang.Power, Unit: powerUnit(c.P), Formula: &FormulaFlueInput})
		in := c.Inputs(Input{Name: "Q", Num: net, Dim: lang.Power, Unit: powerUnit(c.P)})
		switch {
		case c.P.US():
			terminalUS(c, t, in)
		case net <= smallTerminal:
			terminalSmall(c, t, in)
		default:
			terminalUK(c, t, net, in)
		}
	}
}

// smallTerminal is the net heat input in W up to which the distances of small
// units hold. Source: flue.SourceTerminalADJ.
const smallTerminal = 70e3

// terminalUK stores the distances of IGEM/UP/10. Beyond its figures nothing is
// extrapolated: such flues fall under the approval of the chimney height.
func terminalUK(c *Context, t *plant.Part, net float64, in []Input) {
	opening, facing := flue.OpeningRoomSealed, flue.FacingRoomSealed
	if c.P.Block("air").Child("intake").First().Is("from-room") {
		opening, facing = flue.OpeningOpenFlued, flue.FacingOpenFlued
	}
	add := func(name string, l flue.Line, f *Formula) {
		if d, err := l.Distance(net); err == nil {
			c.Add(Quantity{Part: t, Name: name, Num: d, Dim: lang.Length, Unit: "m", Formula: f, Inputs: in})
		}
	}
	add("least-from-window", opening, &FormulaTerminalOpening)
	add("least-from-facing", facing, &FormulaTerminalFacing)
	if t.Get("place").Is("roof") {
		add("least-above", flue.AboveRoof, &FormulaTerminalRoof)
	}
}

// terminalSmall stores the distances of fanned units up to 70 kW net.
func terminalSmall(c *Context, t *plant.Part, in []Input) {
	list := clearances{c: c, t: t, in: in, f: &FormulaTerminalSmall, unit: "m"}
	list.from, _ = flue.SmallTerminals(0)
	list.add("least-from-window", Plain, "opening, below, above or beside it")
	list.add("least-from-facing", Plain, "surface or boundary it faces")
	list.add("least-from-boundary", Plain, "corner or boundary alongside")
	list.add("least-from-terminal", Plain, "terminal beside")
	if t.Get("place").Is("roof") {
		list.add("least-above", Plain, "ground, roof or balcony below")
	} else {
		list.add("least-above-ground", Plain, "ground, roof or balcony below")
	}
}

// terminalUS stores the distances of mechanical draft. What depends on the side
// on which an opening lies has two: the distance that is enough on every side, and
// (Least) the one below which none is enough.
func terminalUS(c *Context, t *plant.Part, in []Input) {
	list := clearances{c: c, t: t, in: in, f: &FormulaTerminalUS, unit: "ft", from: flue.USTerminals()}
	if c.P.Block("air").Child("intake").First().Is("ducted") {
		list.f = &FormulaTerminalDirect
		list.add("least-from-window", Plain, "opening, direct vent above 50 000 Btu/h")
		list.f = &FormulaTerminalUS
	} else {
		list.add("least-from-window", Plain, "door, window or gravity inlet, beside it")
		list.add("least-from-window", Least, "door, window or gravity inlet, above it")
		list.add("least-from-intake", Least, "forced-air inlet within 10 ft, above it")
		c.Add(Quantity{Part: t, Name: "least-from-intake", Num: 10 * 0.3048, Dim: lang.Length, Unit: "ft", Formula: &FormulaTerminalUS, Inputs: in})
	}
	list.add("least-from-meter", Plain, "gas meter or regulator")
	if t.Get("place").Is("wall") {
		list.add("least-above-ground", Plain, "grade or snow, above it")
		list.add("least-above-walkway", Plain, "walkway, above it")
	}
}

// clearances turns a table of distances into values of a terminal.
type clearances struct {
	c    *Context
	t    *plant.Part
	in   []Input
	f    *Formula
	unit string
	from []flue.Clearance
}

func (l *clearances) add(name string, stat Stat, from string) {
	for i := range l.from {
		if l.from[i].From == from {
			l.c.Add(Quantity{Part: l.t, Name: name, Stat: stat, Num: l.from[i].Meters, Dim: lang.Length, Unit: l.unit, Formula: l.f, Inputs: l.in})
			return
		}
	}
}

// equivalentLengths adds up what a unit's products run through, where its data
// limit that.
func equivalentLengths(c *Context, fl *plant.Part, units []*plant.Part) {
	for _, u := range units {
		limit := u.Child("flue-data").Child("length-limit")
		if limit == nil {
			continue
		}
		bend := limit.Get("bend")
		total, bends, lack := 0.0, 0.0, ""
		for _, p := range fl.Parts {
			switch p.Kind {
			case "connector":
				if ref, ok := p.Ref("from"); !ok || ref.Part != u {
					continue
				}
			case "flue-header", "riser", "run":
			case "bend":
				if lack == "" {
					lack = openValue(p, "count")
				}
				if v := p.Get("count"); v.Known() {
					bends += v.Num
				} else {
					bends++
				}
				continue
			default:
				continue
			}
			if v := p.Get("length"); v.Known() {
				total += v.Num
			} else {
				lack = "the length of " + p.Label()
			}
			if lack == "" {
				lack = openValue(p, "bends")
			}
			if v := p.Get("bends"); v.Known() {
				bends += v.Num
			}
		}
		if bends > 0 && !bend.Known() {
			lack = "what a bend counts in the data of " + u.Label()
		}
		if lack != "" {
			c.Missing(u, "flue-length", Plain, Always, lack)
			continue
		}
		c.Add(Quantity{Part: u, Name: "flue-length", Num: total + bends*bend.Num, Dim: lang.Length, Unit: "m", Formula: &FormulaEquivalentLength, Inputs: c.Inputs(Input{Name: "lengths", Num: total, Dim: lang.Length, Unit: "m"}, Input{Name: "bends", Num: bends, Dim: lang.Count})})
	}
}

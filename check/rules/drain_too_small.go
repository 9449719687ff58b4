package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/condensate"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleDrainTooSmall)

var ruleDrainTooSmall = check.Rule{
	ID: "drain-too-small", Group: check.Condensate, Severity: lang.Error, Since: "0.1",
	Summary: "A condensate pipe is smaller than its units need.",
	Why:     "A drain that backs up floods the units and stops them.",
	Mend:    "take a larger pipe",
	Sources: sources(condensate.SourceSmallDrain),
	Run: func(p *check.Pass) {
		for _, pipe := range p.Plant.ByKind("condensate-pipe") {
			bore, units := solve.DrainBore(pipe), drains(pipe)
			heat, lacks := inputOf(p, units)
			place := condensate.Inside
			if pipe.Get("route").Is("outside") {
				place = condensate.Outside
			}
			need, source, err := condensate.LeastBore(heat, len(units), place)
			most, _, _ := condensate.LeastBore(condensate.MostInput, len(units), place)
			switch {
			case bore == 0:
				p.Unknown(pipe, "the size of "+pipe.Label())
			case len(units) == 0:
				p.Unknown(pipe, "what leads into "+pipe.Label()+" (from)")
			case err != nil:
				p.Unknown(pipe, "a plant that the method covers: "+err.Error())
			case bore < need*(1-1e-9): // more heat never asks for less
				p.Report(pipe, check.Finding{Found: p.In(bore, "mm"), Limit: "at least " + p.In(need, "mm"), Source: source, Message: pipe.Label() + " has a bore of " + p.In(bore, "mm") + "; the condensate of its units asks for " + p.In(need, "mm") + "."})
			case lacks != nil && bore < most*(1-1e-9):
				p.Unknown(lacks, "the heat input of "+lacks.Label()+" with its basis")
			}
		}
	},
}

// drains gives the units whose condensate runs through a pipe: those that it comes
// from, or all where it comes from a trap, a neutralizer or another pipe.
func drains(pipe *plant.Part) []*plant.Part {
	var units []*plant.Part
	for _, ref := range pipe.Refs("from") {
		if ref.Part.Kind != "unit" {
			return pipe.Plant().Units()
		}
		units = append(units, ref.Part)
	}
	return units
}

// inputOf sums the net heat input that units state, in W; lacks is one that does
// not state it.
func inputOf(p *check.Pass, units []*plant.Part) (heat float64, lacks *plant.Part) {
	for _, u := range units {
		h, ok := solve.NetInput(p.Plant, u.Child("input"))
		if !ok {
			lacks = u
		}
		heat += h
	}
	return heat, lacks
}

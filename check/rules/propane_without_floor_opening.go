package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/ventilation"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&rulePropaneWithoutFloorOpening)

var rulePropaneWithoutFloorOpening = check.Rule{
	ID: "propane-without-floor-opening", Group: check.Air, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "A room with propane has no opening at floor level.",
	Why:     "Propane is heavier than air and lies on the floor until something lights it.",
	Mend:    "add an opening at floor level",
	Sources: sources(ventilation.SourceBS6644),
	Run: func(p *check.Pass) {
		block := p.Plant.Block("air")
		fuel := p.Plant.Block("basis").Child("gas").Get("fuel")
		if block == nil || !fuel.Open() && !fuel.Is("propane") {
			return
		}
		var unsure *plant.Part
		for _, o := range block.Children("opening") {
			switch level := o.Get("level"); {
			case level.Is("floor-level"):
				return
			case !level.Known():
				unsure = o
			}
		}
		switch {
		case unsure != nil:
			p.Unknown(unsure, "the level of "+unsure.Label())
			return
		case fuel.Open():
			p.Unknown(block, "the gas that the plant burns")
			return
		}
		p.Absent(block, "an opening at floor level", check.Finding{Message: "The plant burns propane, but the room has no opening at floor level."})
	},
}

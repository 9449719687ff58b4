package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleValvesStarveUnits)

var ruleValvesStarveUnits = check.Rule{
	ID: "valves-starve-units", Group: check.Water, Severity: lang.Error, Since: "0.3",
	Summary: "Nothing separates units and circuits, and the circuits' valves may close until a unit has too little water.",
	Why:     "The last unit that runs boils in its own passages and locks out.",
	Mend:    "give one circuit a bypass, or fit a separator",
	Sources: sources(cite.Source{Work: "data of the unit", Read: cite.Published}),
	Run: func(p *check.Pass) {
		group := p.Plant.UnitGroup()
		q := p.Results.Get(group, "flow-left", solve.ValvesShut)
		if q == nil {
			return
		}
		var need plant.Value
		var unit *plant.Part
		for _, u := range p.Plant.Units() {
			v := u.Child("flow-least").First()
			if !v.Known() {
				p.Unknown(u, "the least flow of "+u.Label()+" (flow-least)")
				return
			}
			if unit == nil || v.Num < need.Num {
				need, unit = v, u
			}
		}
		if unit == nil {
			return
		}
		f := p.AtLeast(q, p.StatedLimit(need, q.Unit, "data of the unit"))
		if f == nil {
			return
		}
		f.Message = "With every valve shut that may close, " + f.Found + " are left for the units; " + unit.Label() + " alone needs " + p.In(need.Num, q.Unit) + "."
		at := p.Plant.Block("secondary")
		f.Span, f.File, f.Part = at.Span(), at.File, "secondary"
		p.Report(at, *f)
	},
}

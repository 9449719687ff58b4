package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleUnitFlowTooSmall)

var ruleUnitFlowTooSmall = check.Rule{
	ID: "unit-flow-too-small", Group: check.Water, Severity: lang.Error, Since: "0.1",
	Summary: "The design flow of a unit is less than it needs.",
	Why:     "The unit boils in its own passages and locks out.",
	Mend:    "raise the flow, that is, take a smaller temperature difference",
	Sources: sources(cite.Source{Work: "data of the unit", Read: cite.Published}),
	Run: func(p *check.Pass) {
		unit := "m3/h"
		if p.Plant.US() {
			unit = "gpm"
		}
		for _, u := range p.Plant.Units() {
			q := p.Results.Get(u, "design-flow", solve.Always)
			v := u.Child("flow-least").First()
			if v.Known() {
				if f := p.AtLeast(q, p.StatedLimit(v, unit, "data of the unit")); f != nil {
					f.Message = "The design flow of " + u.Label() + " is " + f.Found + "; it needs " + p.In(v.Num, unit) + "."
					p.Report(u, *f)
				}
				continue
			}
			primary, rise := p.Plant.Block("basis").Get("primary"), u.Child("rise-most").First()
			if !rise.Known() {
				p.Unknown(u, "the least flow or the greatest rise of "+u.Label())
				continue
			}
			if !primary.Known() {
				p.Unknown(u, "the flow and return temperature in the basis (primary)")
				continue
			}
			if d := primary.Num - primary.Num2; d > rise.Num*(1+1e-9) {
				p.Report(u, check.Finding{Found: p.In(d, "K"), Limit: "at most " + p.In(rise.Num, "K"), Message: "The design difference of " + p.In(d, "K") + " is more than the " + p.In(rise.Num, "K") + " that " + u.Label() + " allows."})
			}
		}
	},
}

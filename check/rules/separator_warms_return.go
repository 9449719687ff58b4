package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/separator"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleSeparatorWarmsReturn)

var ruleSeparatorWarmsReturn = check.Rule{
	ID: "separator-warms-return", Group: check.Water, Severity: lang.Warning, Since: "0.2",
	Summary: "The units bring much more water than the circuits take; hot flow runs back to them.",
	Why:     "The return is too warm, and the units stop condensing.",
	Mend:    "let the unit pumps follow the circuits, or lower their setting",
	Sources: sources(separator.Source),
	Run: func(p *check.Pass) {
		limit := p.Limit("separator-ratio-most")
		for _, s := range p.Plant.ByKind("separator") {
			if reserveOpen(p.Plant) {
				p.Unknown(s, "how many units are in reserve (standby)")
				continue
			}
			f := p.AtMost(p.Results.Get(s, "flow-ratio", solve.Always), limit)
			if f == nil {
				continue
			}
			f.Message = "The units send " + f.Found + " of the flow that the circuits take through " + s.Label() + "; " + limit.Text() + " is the most."
			if back := p.Results.Get(s, "return-temperature", solve.Always); back.Known() {
				f.Message += " The return comes back at " + p.In(back.Num, "degC") + "."
			}
			p.Report(s, *f)
		}
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleRegulatorTooCoarse)

var ruleRegulatorTooCoarse = check.Rule{
	ID: "regulator-too-coarse", Group: check.Gas, Severity: lang.Error, Since: "0.2",
	Summary: "One unit at minimum fire burns less than a regulator can control.",
	Why:     "At light-up the regulator hunts; the pressure swings and the flame goes out.",
	Mend:    "take a regulator with a wider range",
	Sources: sources(cite.Source{Work: "range of the regulator", Read: cite.Published}),
	Run: func(p *check.Pass) {
		for _, r := range p.Plant.ByKind("regulator") {
			v := r.Get("least")
			q := p.Results.Get(r, "rate", solve.OneAlone)
			if q == nil || !v.Given {
				continue
			}
			if !v.Known() {
				p.Unknown(r, "the flows that "+r.Label()+" controls (least, most)")
				continue
			}
			if f := p.AtLeast(q, p.StatedLimit(v, q.Unit, "range of the regulator")); f != nil {
				f.Message = "One unit alone at minimum burns " + p.In(q.Num, q.Unit) + "; " + r.Label() + " controls from " + p.In(v.Num, q.Unit) + "."
				p.Report(r, *f)
			}
		}
	},
}

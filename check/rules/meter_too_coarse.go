package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleMeterTooCoarse)

var ruleMeterTooCoarse = check.Rule{
	ID: "meter-too-coarse", Group: check.Gas, Severity: lang.Warning, Since: "0.1",
	Summary: "One unit at minimum fire burns less than the meter can measure.",
	Why:     "The gas is not counted, and the rate cannot be checked at low fire.",
	Mend:    "choose a meter with a wider range",
	Sources: sources(cite.Source{Work: "range of the meter", Read: cite.Published}),
	Run: func(p *check.Pass) {
		for _, m := range p.Plant.ByKind("meter") {
			r := m.Get("least")
			q := p.Results.Get(m, "rate", solve.OneAlone)
			if q == nil || !r.Given {
				continue
			}
			if !r.Known() {
				p.Unknown(m, "the least flow of "+m.Label())
				continue
			}
			if f := p.AtLeast(q, p.StatedLimit(r, q.Unit, "range of the meter")); f != nil {
				f.Message = "One unit alone at minimum burns " + f.Found + "; " + m.Label() + " measures from " + p.In(r.Num, q.Unit) + "."
				p.Report(m, *f)
			}
		}
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleMeterTooSmall)

var ruleMeterTooSmall = check.Rule{
	ID: "meter-too-small", Group: check.Gas, Severity: lang.Error, Since: "0.1",
	Summary: "The meter passes less gas than the plant burns.",
	Why:     "The meter chokes the plant and wears out.",
	Mend:    "take the next meter size",
	Sources: sources(cite.Source{Work: "rating of the meter", Read: cite.Published}),
	Run: func(p *check.Pass) {
		for _, m := range p.Plant.ByKind("meter") {
			r := m.Get("rating")
			q := p.Results.Get(m, "rate", solve.AllFull)
			if q == nil {
				continue
			}
			if !r.Known() {
				p.Unknown(m, "the rating of "+m.Label())
				continue
			}
			unit := q.Unit
			if f := p.AtMost(q, p.StatedLimit(r, unit, "rating of the meter")); f != nil {
				f.Message = m.Label() + " passes " + p.In(r.Num, unit) + ", but the plant burns " + p.In(q.Num, unit) + "."
				p.Report(m, *f)
			}
		}
	},
}

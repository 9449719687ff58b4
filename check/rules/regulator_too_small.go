package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleRegulatorTooSmall)

var ruleRegulatorTooSmall = check.Rule{
	ID: "regulator-too-small", Group: check.Gas, Severity: lang.Error, Since: "0.2",
	Summary: "A regulator passes less gas than the plant burns.",
	Why:     "With all units at full fire the pressure collapses, and units lock out.",
	Mend:    "take the next regulator",
	Sources: sources(cite.Source{Work: "rating of the regulator", Read: cite.Published}),
	Run: func(p *check.Pass) {
		for _, r := range p.Plant.ByKind("regulator") {
			v := r.Get("most")
			q := p.Results.Get(r, "rate", solve.AllFull)
			if q == nil || !v.Given {
				continue
			}
			if !v.Known() {
				p.Unknown(r, "the flows that "+r.Label()+" controls (least, most)")
				continue
			}
			if f := p.AtMost(q, p.StatedLimit(v, q.Unit, "rating of the regulator")); f != nil {
				f.Message = r.Label() + " passes " + p.In(v.Num, q.Unit) + ", but the plant burns " + p.In(q.Num, q.Unit) + "."
				p.Report(r, *f)
			}
		}
	},
}

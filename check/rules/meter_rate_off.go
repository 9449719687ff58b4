package rules

import (
	"math"

	"example.org/tundish/check"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleMeterRateOff)

var ruleMeterRateOff = check.Rule{
	ID: "meter-rate-off", Group: check.Record, Severity: lang.Warning, Since: "0.2",
	Summary: "The meter passes another rate with all units firing than their data make.",
	Why:     "A unit does not reach its input, or gas goes somewhere else.",
	Mend:    "measure each unit alone",
	Sources: sources(sourceDesign),
	Run: func(p *check.Pass) {
		tolerance := p.Limit("measured-gas-rate-tolerance")
		for _, s := range p.Plant.ByKind("simultaneous") {
			m := s.Child("meter")
			v := m.Get("rate")
			if !v.Known() {
				continue
			}
			if noDesign(p, m) {
				return
			}
			q := p.Design.Get(p.Plant.Of.One("meter"), "rate", solve.AllFull)
			if !q.Known() {
				p.Unknown(m, "the computed rate at the meter")
				continue
			}
			if math.Abs(v.Num-q.Num) > tolerance.Num*q.Num*(1+1e-9) {
				p.Report(m, check.Finding{Span: v.Span(), Found: p.In(v.Num, "m3/h"), Limit: p.In(q.Num, "m3/h") + " within " + tolerance.Text(), Quantity: q, Source: tolerance.Source, Message: "With all units at full fire the meter passes " + p.In(v.Num, "m3/h") + "; the units' data make " + p.In(q.Num, "m3/h") + "."})
			}
		}
	},
}

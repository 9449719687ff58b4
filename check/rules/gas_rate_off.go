package rules

import (
	"math"

	"example.org/tundish/check"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleGasRateOff)

var ruleGasRateOff = check.Rule{
	ID: "gas-rate-off", Group: check.Record, Severity: lang.Warning, Since: "0.2",
	Summary: "A unit burns another gas rate than its data.",
	Why:     "The burner pressure or the gas is not what the unit was set for; its output is not what was designed.",
	Mend:    "set the unit to its heat input",
	Sources: sources(sourceDesign),
	Run: func(p *check.Pass) {
		tolerance := p.Limit("measured-gas-rate-tolerance")
		for _, r := range readings(p.Plant) {
			v := r.part.Get("gas-rate")
			if !v.Known() {
				continue
			}
			if noDesign(p, r.part) {
				return
			}
			c := solve.AllFull
			if !r.full {
				c = solve.AllLow
			}
			q := p.Design.Get(r.unit, "gas-rate", c)
			if !q.Known() {
				p.Unknown(r.part, "the computed gas rate of "+r.unit.Label())
				continue
			}
			if math.Abs(v.Num-q.Num) > tolerance.Num*q.Num*(1+1e-9) {
				p.Report(r.part, check.Finding{Part: r.unit.Label(), Span: v.Span(), Found: p.In(v.Num, "m3/h"), Limit: p.In(q.Num, "m3/h") + " within " + tolerance.Text(), Quantity: q, Source: tolerance.Source, Message: r.unit.Label() + " burns " + p.In(v.Num, "m3/h") + " at " + r.fire() + "; its heat input makes " + p.In(q.Num, "m3/h") + "."})
			}
		}
	},
}

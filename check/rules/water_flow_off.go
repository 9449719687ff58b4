package rules

import (
	"math"

	"example.org/tundish/check"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleWaterFlowOff)

var ruleWaterFlowOff = check.Rule{
	ID: "water-flow-off", Group: check.Record, Severity: lang.Warning, Since: "0.2",
	Summary: "The water flow of a unit is not that of the design.",
	Why:     "With too little flow the unit overheats; with too much the return is warm and the pump wastes power.",
	Mend:    "set the pump of the unit",
	Sources: sources(sourceDesign),
	Run: func(p *check.Pass) {
		tolerance := p.Limit("water-flow-tolerance")
		for _, c := range commissioned(p.Plant) {
			w := c.part.Child("water")
			v := w.Get("rate")
			if w == nil || !v.Known() {
				continue
			}
			if noDesign(p, w) {
				return
			}
			q := p.Design.Get(c.unit, "design-flow", solve.Always)
			if !q.Known() {
				p.Unknown(w, "the design flow of "+c.unit.Label())
				continue
			}
			if math.Abs(v.Num-q.Num) > tolerance.Num*q.Num*(1+1e-9) {
				p.Report(w, check.Finding{Part: c.unit.Label(), Span: v.Span(), Found: p.In(v.Num, q.Unit), Limit: p.In(q.Num, q.Unit) + " within " + tolerance.Text(), Quantity: q, Source: tolerance.Source, Message: c.unit.Label() + " has a water flow of " + p.In(v.Num, q.Unit) + "; the design asks for " + p.In(q.Num, q.Unit) + "."})
			}
		}
	},
}

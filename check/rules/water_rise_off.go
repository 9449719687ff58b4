package rules

import (
	"math"

	"example.org/tundish/check"
	"example.org/tundish/lang"
)

var _ = register(&ruleWaterRiseOff)

var ruleWaterRiseOff = check.Rule{
	ID: "water-rise-off", Group: check.Record, Severity: lang.Warning, Since: "0.2",
	Summary: "The temperature rise of a unit is not that of the design.",
	Why:     "Too little rise is too much flow and a warm return; too much is too little flow.",
	Mend:    "set the pump of the unit",
	Sources: sources(sourceDesign),
	Run: func(p *check.Pass) {
		tolerance := p.Limit("water-rise-tolerance")
		for _, c := range commissioned(p.Plant) {
			w := c.part.Child("water")
			flow, ret := w.Get("flow"), w.Get("return")
			if w == nil || !flow.Known() || !ret.Known() {
				continue
			}
			if ret.Num >= flow.Num {
				p.Report(w, check.Finding{Part: c.unit.Label(), Span: ret.Span(), Source: sourceRecord, Message: c.unit.Label() + ": the return at " + p.In(ret.Num, "degC") + " is not colder than the flow at " + p.In(flow.Num, "degC") + "; the readings are exchanged, or the unit did not fire."})
				continue
			}
			if noDesign(p, w) {
				return
			}
			primary := p.Plant.Of.Block("basis").Get("primary")
			if !primary.Known() {
				p.Unknown(w, "the flow and return temperature of the design")
				return
			}
			want, have := primary.Num-primary.Num2, flow.Num-ret.Num
			if math.Abs(have-want) > tolerance.Num*want*(1+1e-9) {
				p.Report(w, check.Finding{Part: c.unit.Label(), Span: flow.Span(), Found: p.In(have, "K"), Limit: p.In(want, "K") + " within " + tolerance.Text(), Source: tolerance.Source, Message: c.unit.Label() + " heats its water by " + p.In(have, "K") + "; the design asks for " + p.In(want, "K") + "."})
			}
		}
	},
}

package rules

import (
	"math"

	"example.org/tundish/check"
	"example.org/tundish/lang"
)

var _ = register(&ruleHeatBalanceOff)

var ruleHeatBalanceOff = check.Rule{
	ID: "heat-balance-off", Group: check.Record, Severity: lang.Warning, Since: "0.2",
	Summary: "What a unit gave to the water does not fit the gas it took.",
	Why:     "One of gas rate, water flow and temperatures is wrong, so none of them proves anything.",
	Mend:    "wait for steady state, check the meter and the thermometers, read again",
	Limits:  "Silent where the rise or the water flow alone is off; their own rules speak then.",
	Sources: sources(sourceRecord),
	Run: func(p *check.Pass) {
		most, least := p.Limit("measured-efficiency-most"), p.Limit("measured-efficiency-least")
		for _, c := range commissioned(p.Plant) {
			q := p.Results.Efficiency(c.part)
			if q == nil || !waterAsDesigned(p, c) {
				continue
			}
			f := p.AtMost(q, most)
			if f == nil {
				f = p.AtLeast(q, least)
			}
			if f == nil {
				continue
			}
			f.Part = c.unit.Label()
			f.Message = "By its readings " + c.unit.Label() + " gives " + f.Found + " of the gas it takes to the water; that is not to be believed."
			p.Report(q.Part, *f)
		}
	},
}

// waterAsDesigned reports whether rise and water flow each are within the
// tolerance of the design.
func waterAsDesigned(p *check.Pass, c reading) bool {
	if p.Design == nil {
		return false
	}
	w := c.part.Child("water")
	near := func(have, want float64, id string) bool {
		return math.Abs(have-want) <= p.Limit(id).Num*want*(1+1e-9)
	}
	primary := p.Plant.Of.Block("basis").Get("primary")
	q := p.Design.Get(c.unit, "design-flow", 0)
	return primary.Known() && q.Known() &&
		near(w.Get("flow").Num-w.Get("return").Num, primary.Num-primary.Num2, "water-rise-tolerance") &&
		near(w.Get("rate").Num, q.Num, "water-flow-tolerance")
}

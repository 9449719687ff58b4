package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/exchanger"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleExchangerTooSmall)

var ruleExchangerTooSmall = check.Rule{
	ID: "exchanger-too-small", Group: check.Water, Severity: lang.Error, Since: "0.2",
	Summary: "A plate exchanger does not pass the heat that its circuits ask for.",
	Why:     "The building stays cold with every unit at full fire.",
	Mend:    "take more plates, or wider temperatures",
	Sources: sources(exchanger.Source),
	Run: func(p *check.Pass) {
		for _, x := range p.Plant.ByKind("exchanger") {
			q := p.Results.Get(x, "duty", solve.Always)
			need := p.Results.Get(p.Plant.Block("secondary"), "heat", solve.Always)
			switch {
			case q == nil: // nothing runs through it
			case !q.Known():
				p.Unknown(x, q.Missing)
			case !need.Known():
				p.Unknown(x, "the flows and temperatures of the circuits")
			default:
				if f := p.AtLeast(q, p.NumberLimit(need.Num, lang.Power, "kW", need.Formula.Source)); f != nil {
					f.Message = x.Label() + " passes " + f.Found + " with the flows and temperatures of the design; its circuits ask for " + p.In(need.Num, "kW") + "."
					p.Report(x, *f)
				}
			}
		}
	},
}

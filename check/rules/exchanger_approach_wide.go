package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/exchanger"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleExchangerApproachWide)

var ruleExchangerApproachWide = check.Rule{
	ID: "exchanger-approach-wide", Group: check.Water, Severity: lang.Warning, Since: "0.2",
	Summary: "The return of the units is much warmer than that of the circuits behind a plate exchanger.",
	Why:     "Each kelvin is lost from condensing.",
	Mend:    "take more plates",
	Sources: sources(exchanger.Source),
	Run: func(p *check.Pass) {
		limit := p.Limit("exchanger-approach-most")
		for _, x := range p.Plant.ByKind("exchanger") {
			if f := p.AtMost(p.Results.Get(x, "approach", solve.Always), limit); f != nil {
				f.Message = "The return of the units is " + f.Found + " warmer than that of the circuits behind " + x.Label() + "; " + limit.Text() + " is the most."
				p.Report(x, *f)
			}
		}
	},
}

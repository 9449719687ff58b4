package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/exchanger"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleExchangerTemperaturesCross)

// sourceHotToCold is firm, so that what cannot be is an error and not a warning.
var sourceHotToCold = cite.Source{Work: "heat flows from hot to cold only", Read: cite.Published, Note: "physics"}

var ruleExchangerTemperaturesCross = check.Rule{
	ID: "exchanger-temperatures-cross", Group: check.Water, Severity: lang.Error, Since: "0.2",
	Summary: "The temperatures of a plate exchanger cross, or come nearer than 1 K.",
	Why:     "No exchanger of any size can do it.",
	Mend:    "lower the flow temperature of the circuits, or raise that of the units",
	Sources: sources(exchanger.Source),
	Run: func(p *check.Pass) {
		limit := p.Limit("exchanger-approach-least")
		for _, x := range p.Plant.ByKind("exchanger") {
			f := p.AtLeast(p.Results.Group(x, "approach", solve.Least, solve.Always), limit)
			if f == nil {
				continue
			}
			f.Message = "The two sides of " + x.Label() + " come within " + f.Found + "; an exchanger needs " + limit.Text() + " at least."
			if f.Quantity.Num <= 0 {
				f.Severity, f.Source, f.Limit = lang.Error, sourceHotToCold, "above 0 K"
				f.Message = "At one end of " + x.Label() + " the side that is to be heated is not colder than the other (" + f.Found + "); no heat flows there."
			}
			p.Report(x, *f)
		}
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/separator"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleSeparatorTooFast)

var ruleSeparatorTooFast = check.Rule{
	ID: "separator-too-fast", Group: check.Water, Severity: lang.Warning, Since: "0.2",
	Summary: "Water runs too fast through the body of a hydraulic separator.",
	Why:     "The streams carry each other along; air and dirt do not settle, and the circuits push each other.",
	Mend:    "take a wider separator",
	Sources: sources(separator.Source),
	Run: func(p *check.Pass) {
		limit := p.Limit("separator-velocity-most")
		for _, s := range p.Plant.ByKind("separator") {
			if f := p.AtMost(p.Results.Get(s, "velocity", solve.Always), limit); f != nil {
				f.Message = "Water runs through the body of " + s.Label() + " at " + f.Found + "; " + limit.Text() + " is the most."
				p.Report(s, *f)
			}
		}
	},
}

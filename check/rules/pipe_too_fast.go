package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&rulePipeTooFast)

var rulePipeTooFast = check.Rule{
	ID: "pipe-too-fast", Group: check.Water, Severity: lang.Error, Since: "0.1",
	Summary: "Water runs too fast through a pipe.",
	Why:     "Fast water is loud and wears bends.",
	Mend:    "take the next pipe size",
	Sources: sources(cite.Source{Work: "CIBSE Guide B (1986), Table B1.13, as quoted in course notes", Read: cite.Published}),
	Run: func(p *check.Pass) {
		for _, part := range p.Plant.Block("headers").Children("pipe") {
			limit := p.Limit("pipe-velocity-large")
			if v := part.Get("size"); v.Known() && v.Num <= 0.0541 {
				limit = p.Limit("pipe-velocity-small")
			}
			f := p.AtMost(p.Results.Get(part, "velocity", solve.Always), limit)
			if f == nil {
				continue
			}
			f.Message = "Water runs through " + part.Label() + " at " + f.Found + "; the limit is " + limit.Text() + "."
			f.Fixes = nextWaterSize(part, f.Quantity.Num/limit.Num)
			p.Report(part, *f)
		}
	},
}

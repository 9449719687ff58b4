package rules

import (
	"math"

	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&rulePipeGradientHigh)

var rulePipeGradientHigh = check.Rule{
	ID: "pipe-gradient-high", Group: check.Water, Severity: lang.Error, Since: "0.1",
	Summary: "A water pipe loses too much pressure by meter.",
	Why:     "The pumps work against the pipe, and the circuits do not balance.",
	Mend:    "take the next pipe size",
	Sources: sources(cite.Source{Work: "LTHW pipe sizing, as quoted in course notes", Read: cite.Published, Note: "300 Pa/m; band 100 to 350 from memory"}),
	Run: func(p *check.Pass) {
		limit := p.Limit("pipe-gradient-most")
		for _, part := range p.Plant.Block("headers").Children("pipe") {
			f := p.AtMost(p.Results.Get(part, "gradient", solve.Always), limit)
			if f == nil {
				continue
			}
			f.Message = part.Label() + " loses " + f.Found + "; the limit is " + limit.Text() + "."
			f.Fixes = nextWaterSize(part, math.Pow(f.Quantity.Num/limit.Num, 0.4))
			p.Report(part, *f)
		}
	},
}

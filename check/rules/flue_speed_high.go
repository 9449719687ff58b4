package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleFlueSpeedHigh)

var ruleFlueSpeedHigh = check.Rule{
	ID: "flue-speed-high", Group: check.Flue, Severity: lang.Warning, Since: "0.1",
	Summary: "Products run faster through a flue than is usual.",
	Why:     "A fast flue is loud and leaves little pressure for the weakest unit.",
	Mend:    "take the next flue size",
	Sources: sources(cite.Source{Work: "usual speeds in flues of condensing units", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		for _, kind := range [...]string{"flue-header", "run", "riser"} {
			for _, part := range p.Plant.ByKind(kind) {
				if f := p.AtMost(p.Results.Get(part, "velocity", solve.AllFull), p.Limit("flue-velocity-most")); f != nil {
					f.Message = "Products run through " + part.Label() + " at " + f.Found + " with all units at full fire; usual is up to " + p.In(p.Limit("flue-velocity-most").Num, "m/s") + "."
					p.Report(part, *f)
				}
			}
		}
	},
}

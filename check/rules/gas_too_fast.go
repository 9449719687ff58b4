package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleGasTooFast)

var ruleGasTooFast = check.Rule{
	ID: "gas-too-fast", Group: check.Gas, Severity: lang.Error, Since: "0.1",
	Summary: "Gas runs too fast through a pipe.",
	Why:     "Fast gas whistles and carries dirt into valves.",
	Mend:    "take the next size, or fit a filter",
	Sources: sources(cite.Source{Work: "IGEM/UP/2", Read: cite.Memory, Note: "45 m/s filtered, 20 m/s unfiltered"}),
	Run: func(p *check.Pass) {
		block := p.Plant.Block("gas-run")
		limit := p.Limit("gas-velocity-unfiltered")
		if len(block.Children("filter")) > 0 {
			limit = p.Limit("gas-velocity-filtered")
		}
		for _, kind := range [...]string{"pipe", "manifold", "drop"} {
			for _, part := range block.Children(kind) {
				if f := p.AtMost(p.Results.Get(part, "velocity", solve.AllFull), limit); f != nil {
					f.Message = "Gas runs through " + part.Label() + " at " + f.Found + "; the limit is " + limit.Text() + "."
					p.Report(part, *f)
				}
			}
		}
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleGasEndOpen)

var ruleGasEndOpen = check.Rule{
	ID: "gas-end-open", Group: check.Gas, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "The dead end of a gas manifold has no blank.",
	Why:     "Gas leaves through it.",
	Mend:    "close the end with a blank and its gasket",
	Sources: sources(cite.Source{Work: "an open end of a gas pipe", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		block := p.Plant.Block("gas-run")
		for _, m := range block.Children("manifold") {
			if !blanked(block.Children("blank"), m) {
				missing(p, m, "the blank of "+m.Label(), check.Finding{Message: "The dead end of " + m.Label() + " has no blank."}, "blank")
			}
		}
	},
}

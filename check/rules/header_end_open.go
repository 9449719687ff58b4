package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleHeaderEndOpen)

var ruleHeaderEndOpen = check.Rule{
	ID: "header-end-open", Group: check.Water, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "The dead end of a header has no blank.",
	Why:     "The plant cannot be filled, or floods when it is.",
	Mend:    "close the end with a blank and its gasket",
	Sources: sources(cite.Source{Work: "an open flange", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		block := p.Plant.Block("headers")
		for _, h := range block.Children("header") {
			if !blanked(block.Children("blank"), h) {
				missing(p, h, "the blank of "+h.Label(), check.Finding{Message: "The dead end of " + h.Label() + " has no blank."}, "blank")
			}
		}
	},
}

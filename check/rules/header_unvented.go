package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleHeaderUnvented)

var ruleHeaderUnvented = check.Rule{
	ID: "header-unvented", Group: check.Water, Severity: lang.Warning, Since: "0.1",
	Summary: "The headers have no air vent.",
	Why:     "Air collects at the high end, sings and stops the flow.",
	Mend:    "add an air vent at the high end of the flow header",
	Sources: sources(cite.Source{Work: "an air vent at each high point", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		block := p.Plant.Block("headers")
		if block == nil || len(block.Children("header")) == 0 {
			return
		}
		if there, open := stands(block, "vent", "air-separator"); there {
			return
		} else if open {
			p.Unknown(block, "whether the headers have an air vent")
			return
		}
		p.Absent(block, "an air vent", check.Finding{Message: "The headers have no air vent."})
	},
}

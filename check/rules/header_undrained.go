package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleHeaderUndrained)

var ruleHeaderUndrained = check.Rule{
	ID: "header-undrained", Group: check.Water, Severity: lang.Error, Since: "0.1",
	Summary: "The headers have no drain.",
	Why:     "The plant cannot be emptied for service.",
	Mend:    "add a drain cock at the low end of a header",
	Sources: sources(cite.Source{Work: "a drain at the low point of each section", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		block := p.Plant.Block("headers")
		if block == nil || len(block.Children("header")) == 0 {
			return
		}
		if there, open := stands(block, "drain-cock"); there {
			return
		} else if open {
			p.Unknown(block, "whether the headers have a drain cock")
			return
		}
		p.Absent(block, "a drain cock", check.Finding{Message: "The headers have no drain cock."})
	},
}

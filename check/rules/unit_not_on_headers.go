package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleUnitNotOnHeaders)

var ruleUnitNotOnHeaders = check.Rule{
	ID: "unit-not-on-headers", Group: check.Water, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "A unit has no branch to the flow header or from the return header.",
	Why:     "It has no water, and burns out when it fires.",
	Mend:    "give each unit a branch to each header",
	Sources: sources(cite.Source{Work: "a fired unit needs water", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		block := p.Plant.Block("headers")
		if block == nil {
			if len(p.Plant.Units()) > 0 {
				p.Unknown(nil, "a headers block")
			}
			return
		}
		var out, in plant.PartSet
		for _, b := range block.Children("branch") {
			for _, r := range b.Refs("from") {
				out.Add(r.Part)
			}
			for _, r := range b.Refs("to") {
				in.Add(r.Part)
			}
		}
		for _, u := range p.Plant.Units() {
			switch {
			case !out.Has(u) && !in.Has(u):
				missing(p, u, "the branches of "+u.Label(), check.Finding{Message: u.Label() + " has no branch to the headers."}, "branch")
			case !out.Has(u):
				missing(p, u, "the flow branch of "+u.Label(), check.Finding{Message: u.Label() + " has no branch to the flow header."}, "branch")
			case !in.Has(u):
				missing(p, u, "the return branch of "+u.Label(), check.Finding{Message: u.Label() + " has no branch from the return header."}, "branch")
			}
		}
	},
}

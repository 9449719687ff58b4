package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleNonReturnMissing)

var ruleNonReturnMissing = check.Rule{
	ID: "non-return-missing", Group: check.Water, Severity: lang.Error, Since: "0.1",
	Summary: "A unit of several has neither a non-return valve nor a shut-off valve.",
	Why:     "Water of the running units goes backwards through a stopped one and cools the flow.",
	Mend:    "add a non-return valve or a motorized shut-off valve",
	Sources: sources(cite.Source{Work: "parallel circuits with their own pumps need a non-return valve", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		units := p.Plant.Units()
		if len(units) < 2 {
			return
		}
		for _, u := range units {
			pump := u.Child("pump")
			if pump == nil || pump.Undecided() {
				p.Unknown(u, "the pump of "+u.Label())
				continue
			}
			if pump.First().Absent() {
				continue // one pump drives all units the right way
			}
			if pump.Has("non-return") || pump.Has("shut-off") || p.Plant.Block("controls").Child("off-units").First().Is("shut") {
				continue
			}
			f := check.Finding{Span: pump.Span(), Message: u.Label() + " has neither a non-return valve nor a shut-off valve; water runs back through it when it stands."}
			end := pump.Stmt.HeadSpan().End
			f.Fixes = []lang.Fix{{Title: "Add a non-return valve", Best: true, Edits: []lang.Edit{{Span: lang.Span{Start: end, End: end}, NewText: " non-return"}}}}
			p.Absent(u, "the non-return valve of "+u.Label(), f)
		}
	},
}

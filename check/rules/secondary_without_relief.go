package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleSecondaryWithoutRelief)

var ruleSecondaryWithoutRelief = check.Rule{
	ID: "secondary-without-relief", Group: check.Pressure, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "The circuits behind an exchanger have no safety valve.",
	Why:     "The exchanger heats a closed circuit of its own.",
	Mend:    "add a safety valve behind the exchanger",
	Sources: sources(cite.Source{Work: "EN 12828", Edition: "2012+A1:2014", Read: cite.Published, Note: "extracts"}),
	Run: func(p *check.Pass) {
		if len(p.Plant.ByKind("exchanger")) == 0 || p.Plant.Block("secondary") == nil {
			return
		}
		s := p.Plant.Block("safety")
		if s == nil {
			p.Unknown(nil, "a safety block")
			return
		}
		there := false
		for _, r := range s.Children("relief") {
			_, placed := r.Ref("on")
			there = there || solve.ReliefCircuit(r) == solve.Secondary || !r.Get("circuit").Known() && !placed
		}
		if !there {
			p.Absent(s, "a safety valve", check.Finding{Message: "The circuits behind the exchanger have no safety valve."})
		}
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleStartsTooOften)

var ruleStartsTooOften = check.Rule{
	ID: "starts-too-often", Group: check.Capacity, Severity: lang.Warning, Since: "0.1",
	Summary: "The last unit starts too often in an hour.",
	Why:     "Each start wears the unit and burns badly.",
	Mend:    "add a buffer or widen the switching difference",
	Sources: sources(cite.Source{Work: "starts of a unit by hour", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		group := p.Plant.UnitGroup()
		cycling := p.Plant.Block("controls").Child("cycling")
		if cycling == nil {
			return
		}
		limit, word := p.Limit("starts-most"), "usual"
		if v := cycling.Get("most"); v.Known() {
			limit, word = p.StatedLimit(v, limit.Unit, "limit of the controls (cycling)"), "allowed"
		}
		if f := p.AtMost(p.Results.Get(group, "starts", solve.Always), limit); f != nil {
			f.Message = "At half of its least heat the last unit starts " + f.Found + "; " + word + " is up to " + limit.Text() + "."
			p.Report(group, *f)
		}
	},
}

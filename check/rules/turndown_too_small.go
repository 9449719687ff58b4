package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleTurndownTooSmall)

var ruleTurndownTooSmall = check.Rule{
	ID: "turndown-too-small", Group: check.Capacity, Severity: lang.Error, Since: "0.1",
	Summary: "The plant turns down less than the code asks for.",
	Why:     "The plant cycles at part load.",
	Mend:    "take units with a wider turndown or more of them",
	Sources: sources(cite.Source{Work: "IECC C403.3.4 as in WAC 51-11C-40334", Read: cite.Published, Note: "by gross input: 1 MBtu/h 3:1, over 5 4:1, over 10 5:1"}),
	Run: func(p *check.Pass) {
		if !p.Plant.US() {
			return
		}
		group := p.Plant.UnitGroup()
		in := p.Results.Group(group, "input-gross", solve.Total, solve.Always)
		q := p.Results.Get(group, "turndown", solve.Always)
		if in == nil || q == nil {
			return
		}
		if !in.Known() {
			p.Unknown(group, in.Missing)
			return
		}
		id := ""
		switch mbh := in.Num / 293.07107; {
		case mbh > 10000:
			id = "turndown-us-10"
		case mbh > 5000:
			id = "turndown-us-5"
		case mbh >= 1000*(1-1e-9):
			id = "turndown-us-1"
		default:
			return
		}
		limit := p.Limit(id)
		if f := p.AtLeast(q, limit); f != nil {
			f.Message = "The plant turns down " + lang.Num(q.Num, 3) + ":1; at " + p.In(in.Num, "MBH") + " the code asks for " + lang.Num(limit.Num, 2) + ":1."
			p.Report(group, *f)
		}
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/vessel"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&rulePrechargeLeavesNoRoom)

var rulePrechargeLeavesNoRoom = check.Rule{
	ID: "precharge-leaves-no-room", Group: check.Pressure, Severity: lang.Error, Since: "0.2",
	Summary: "The precharge of a vessel leaves no room under the safety valve.",
	Why:     "No vessel of any size can take the expansion; the safety valve lifts at each heating-up.",
	Mend:    "take a safety valve of higher set pressure if every part allows it, or place the vessel higher",
	Sources: sources(vessel.SourceEN12828),
	Run: func(p *check.Pass) {
		for _, v := range p.Plant.ByKind("vessel") {
			room := p.Results.Get(v, "pressure-room", solve.Always)
			if !room.Known() || room.Num > 1 { // more than 1 Pa: vessel-too-small judges the rest
				continue
			}
			end, pre := p.Results.Get(v, "end-pressure", solve.Always), v.Get("precharge")
			p.Report(v, check.Finding{
				Span: pre.Span(), Found: p.In(pre.Num, end.Unit), Limit: "below " + p.In(end.Num, end.Unit), Quantity: room,
				Message: "The precharge of " + v.Label() + " at " + p.In(pre.Num, end.Unit) + " leaves no room below the end pressure of " + p.In(end.Num, end.Unit) + ".",
			})
		}
	},
}

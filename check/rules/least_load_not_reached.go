package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleLeastLoadNotReached)

var ruleLeastLoadNotReached = check.Rule{
	ID: "least-load-not-reached", Group: check.Capacity, Severity: lang.Warning, Since: "0.1",
	Summary: "The least heat of one unit is more than the least lasting load.",
	Why:     "The plant switches on and off all summer.",
	Mend:    "take a smaller lead unit, a wider turndown or a buffer",
	Sources: sources(cite.Source{Work: "least heat against least load", Read: cite.Published, Note: "physics of cycling"}),
	Run: func(p *check.Pass) {
		group := p.Plant.UnitGroup()
		stated := p.Plant.Block("basis").Child("load-least")
		v := stated.First()
		if group != nil && v.Open() {
			p.Unknown(stated, "the least lasting load")
		}
		if group == nil || !v.Known() {
			return
		}
		unit := powerUnit(p.Plant)
		f := p.AtMost(p.Results.Get(group, "least-heat", solve.Always), p.StatedLimit(v, unit, "least lasting load of the basis"))
		if f == nil {
			return
		}
		f.Message = "The plant cannot go below " + f.Found + ", but the least lasting load is " + p.In(v.Num, unit) + "."
		if q := p.Results.Get(group, "hours-below-least", solve.Always); q.Known() && q.Num > 0 {
			f.Message += " By the load curve it switches on and off for " + p.In(q.Num, "h") + " of the year."
		}
		f.Span, f.File, f.Part = v.Span(), v.File, "basis.load-least"
		p.Report(group, *f)
	},
}

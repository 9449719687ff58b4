package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleReserveNotMet)

var ruleReserveNotMet = check.Rule{
	ID: "reserve-not-met", Group: check.Capacity, Severity: lang.Error, Since: "0.1",
	Summary: "With the stated number of units off, the rest do not meet the load.",
	Why:     "The reserve is on paper only.",
	Mend:    "take larger units or one more",
	Sources: sources(cite.Source{Work: "stated reserve against design load", Read: cite.Published, Note: "the requirement of the specification itself"}),
	Run: func(p *check.Pass) {
		group := p.Plant.UnitGroup()
		standby := p.Plant.Block("basis").Get("standby")
		if group != nil && reserveOpen(p.Plant) {
			p.Unknown(group, "how many units are in reserve (standby)")
			return
		}
		if !standby.Known() || standby.Num < 0.5 {
			return
		}
		one := p.NumberLimit(1, lang.Ratio, "%", cite.Source{Work: "stated reserve against design load", Read: cite.Published})
		f := p.AtLeast(p.Results.Get(group, "reserve-cover", solve.Always), one)
		if f == nil {
			return
		}
		load := p.Results.Get(p.Plant.Block("basis"), "load", 0)
		unit := powerUnit(p.Plant)
		n := float64(len(p.Plant.Units())) - standby.Num
		f.Span, f.File, f.Part = standby.Span(), standby.File, "basis.standby"
		f.Message = "With " + counted(standby.Num, "unit") + " off the others give " + p.In(f.Quantity.Num*load.Num, unit) + " of the " + p.In(load.Num, unit) + " wanted (" + f.Found + ")."
		f.Mend = "take more units than stand in reserve"
		if n > 0 {
			f.Mend = "take units of at least " + p.In(load.Num/n, unit) + " each, or one unit more"
		}
		p.Report(group, *f)
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleUnitsTooSmall)

var ruleUnitsTooSmall = check.Rule{
	ID: "units-too-small", Group: check.Capacity, Severity: lang.Error, Since: "0.1",
	Summary: "The units together give less than the design load.",
	Why:     "The building stays cold on the design day.",
	Mend:    "add a unit or take the next size",
	Sources: sources(cite.Source{Work: "output against design load", Read: cite.Published, Note: "definition"}),
	Run: func(p *check.Pass) {
		group := p.Plant.UnitGroup()
		if group == nil {
			return
		}
		load := p.Results.Get(p.Plant.Block("basis"), "load", 0)
		if load == nil || !load.Known() {
			needs := "the design load"
			if load != nil {
				needs = load.Missing // it may be stated, and not to be trusted while the file cannot be read whole
			}
			p.Unknown(p.Plant.Block("basis"), needs)
			return
		}
		f := p.AtLeast(p.Results.Group(group, "output", solve.Total, solve.Always), p.NumberLimit(load.Num, lang.Power, powerUnit(p.Plant), cite.Source{Work: "output against design load", Read: cite.Published}))
		if f == nil {
			return
		}
		n := float64(len(p.Plant.Units()))
		f.Message = "The units give " + f.Found + " together; the design load is " + p.In(load.Num, powerUnit(p.Plant)) + "."
		f.Mend = "add a unit, or take units of at least " + p.In(load.Num/n, powerUnit(p.Plant)) + " each"
		p.Report(group, *f)
	},
}

// powerUnit is the unit in which loads are printed in the jurisdiction.
func powerUnit(pl *plant.Plant) string {
	if pl.US() {
		return "MBH"
	}
	return "kW"
}

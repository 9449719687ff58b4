package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleUnitsOutOfBalance)

var ruleUnitsOutOfBalance = check.Rule{
	ID: "units-out-of-balance", Group: check.Water, Severity: lang.Error, Since: "0.1",
	Summary: "One unit gets much less water than another.",
	Why:     "The starved unit overheats and cycles while the others run cool.",
	Mend:    "take a larger header, reverse the return, or balance the branches",
	Sources: sources(cite.Source{Work: "balance of units on common headers", Read: cite.Memory, Note: "five per cent"}),
	Run: func(p *check.Pass) {
		group, headers := p.Plant.UnitGroup(), p.Plant.Block("headers")
		if group == nil || headers == nil || len(p.Plant.Units()) < 2 {
			return
		}
		limit := p.Limit("unit-balance-least")
		f := p.AtLeast(p.Results.Get(group, "flow-balance", solve.AllFull), limit)
		if f == nil {
			return
		}
		low := ""
		least := 0.0
		for _, u := range p.Plant.Units() {
			if q := p.Results.Get(u, "flow", solve.AllFull); q.Known() && (low == "" || q.Num < least) {
				low, least = u.Label(), q.Num
			}
		}
		f.Span, f.File = headers.Span(), headers.File
		f.Message = low + " gets " + f.Found + " of the water of the best fed unit; at least " + limit.Text() + " is wanted."
		p.Report(group, *f)
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/ventilation"
	"example.org/tundish/lang"
)

var _ = register(&ruleSupplyTooSmall)

var ruleSupplyTooSmall = check.Rule{
	ID: "supply-too-small", Group: check.Air, Severity: lang.Error, Since: "0.1",
	Summary: "The supply fan moves less air than the units need.",
	Why:     "The burners lack air and make carbon monoxide.",
	Mend:    "take a larger supply fan",
	Sources: sources(ventilation.SourceBS6644),
	Run: func(p *check.Pass) {
		block := p.Plant.Block("air")
		need := p.Results.Get(block, "needed-supply", 0)
		if need == nil {
			return // no fans
		}
		if nationOpen(p, block) {
			return
		}
		if !need.Known() {
			p.Unknown(block, need.Missing)
			return
		}
		f := p.AtLeast(p.Results.Get(block, "supply", 0), p.NumberLimit(need.Num, lang.VolumeFlow, need.Unit, need.Formula.Source))
		if f == nil {
			return
		}
		for _, fan := range block.Children("fan") {
			if fan.Get("kind").Is("supply") {
				f.Span, f.Part = fan.Span(), fan.Label()
				break
			}
		}
		f.Message = "The supply of " + f.Found + " is less than the " + p.In(need.Num, need.Unit) + " that the units need."
		p.Report(block, *f)
	},
}

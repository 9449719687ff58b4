package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/ventilation"
	"example.org/tundish/lang"
)

var _ = register(&ruleRoomUnderPressure)

var ruleRoomUnderPressure = check.Rule{
	ID: "room-under-pressure", Group: check.Air, Severity: lang.Error, Since: "0.1",
	Summary: "The fans leave too little air for the burners.",
	Why:     "The room goes under pressure and pulls products in.",
	Mend:    "raise the supply or cut the extract",
	Sources: sources(ventilation.SourceBS6644),
	Run: func(p *check.Pass) {
		block := p.Plant.Block("air")
		need := p.Results.Get(block, "needed-air-left", 0)
		if need == nil {
			return // no fans
		}
		if !need.Known() {
			p.Unknown(block, need.Missing)
			return
		}
		f := p.AtLeast(p.Results.Get(block, "air-left", 0), p.NumberLimit(need.Num, lang.VolumeFlow, need.Unit, need.Formula.Source))
		if f == nil {
			return
		}
		f.Message = "The fans leave " + f.Found + " for the burners; " + p.In(need.Num, need.Unit) + " must stay."
		p.Report(block, *f)
	},
}

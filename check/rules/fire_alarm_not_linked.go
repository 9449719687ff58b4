package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleFireAlarmNotLinked)

var ruleFireAlarmNotLinked = check.Rule{
	ID: "fire-alarm-not-linked", Group: check.Air, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "The fire alarm does not shut the gas.",
	Why:     "Gas feeds the fire.",
	Mend:    "let the fire alarm close the emergency valve",
	Sources: sources(cite.Source{Work: "IGEM/UP/11 and BB 100", Read: cite.Practice, Note: "gas and power are isolated on a fire alarm, as quoted"}),
	Run: func(p *check.Pass) {
		block := p.Plant.Block("air")
		if block == nil {
			return
		}
		for _, a := range block.Children("fire-alarm") {
			if len(a.Refs("closes")) > 0 {
				return
			}
			if a.First().Open() {
				p.Unknown(a, "what the fire alarm closes")
				return
			}
		}
		p.Absent(block, "the link with the fire alarm", check.Finding{Message: "No fire alarm shuts the gas."})
	},
}

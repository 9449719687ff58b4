package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/ventilation"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleOpeningMissing)

var ruleOpeningMissing = check.Rule{
	ID: "opening-missing", Group: check.Air, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "The room lacks a high or a low opening.",
	Why:     "Without both, air does not move through the room.",
	Mend:    "add the opening, or fans",
	Sources: sources(ventilation.SourceBS6644),
	Run: func(p *check.Pass) {
		block := p.Plant.Block("air")
		if block == nil {
			if len(p.Plant.Units()) > 0 {
				p.Unknown(nil, "an air block")
			}
			return
		}
		if len(block.Children("fan")) > 0 || nationOpen(p, block) {
			return
		}
		have := map[string]bool{}
		for _, o := range block.Children("opening") {
			level := o.Get("level")
			if !level.Known() {
				p.Unknown(o, "the level of "+o.Label())
				return
			}
			have[level.Word] = true
		}
		if o := solve.LeadsOpen(block); o != nil && p.Plant.US() && solve.SingleOpening(block) && !block.Child("intake").First().Is("ducted") {
			p.Unknown(o, "where "+o.Label()+" leads, and whether through a duct: a single opening must lead straight outside")
			return
		}
		if p.Plant.US() && (solve.SingleOpening(block) || block.Child("intake").First().Is("ducted")) {
			return // the code allows a single high opening, and none where each unit draws its own air
		}
		if p.Plant.US() && block.Child("intake").First().Open() && !(have["high-level"] && (have["low-level"] || have["floor-level"])) {
			p.Unknown(block, "where the units take their air from (intake)")
			return
		}
		if !have["high-level"] {
			p.Absent(block, "a high opening", check.Finding{Message: "The room has no high opening."})
		}
		if !have["low-level"] && !have["floor-level"] {
			p.Absent(block, "a low opening", check.Finding{Message: "The room has no low opening."})
		}
	},
}

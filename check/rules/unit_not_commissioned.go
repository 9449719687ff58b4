package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleUnitNotCommissioned)

var ruleUnitNotCommissioned = check.Rule{
	ID: "unit-not-commissioned", Group: check.Record, Severity: lang.Error, Since: "0.2",
	Summary: "A unit of the plant is neither commissioned nor said to wait.",
	Why:     "A unit is handed over that nobody measured.",
	Mend:    "commission the unit, or say why it waits",
	Sources: sources(sourceExamine),
	Run: func(p *check.Pass) {
		done := p.Plant.ByKind("commissioned")
		if len(done) == 0 {
			return // nothing was commissioned yet
		}
		if noDesign(p, done[0]) {
			return
		}
		told := map[*plant.Part]bool{}
		for _, c := range commissioned(p.Plant) {
			told[c.unit] = true
		}
		// One name too few or twice: the block may be meant for the unit that lacks.
		astray := len(told) < len(done)
		for _, w := range p.Plant.ByKind("not-commissioned") {
			for _, ref := range w.Subjects() {
				told[ref.Part] = true
			}
		}
		for _, u := range p.Plant.Of.Units() {
			if !told[u] && astray {
				p.Unknown(p.Plant.One("record"), "the right name of every unit that was commissioned")
			} else if !told[u] {
				p.Absent(p.Plant.One("record"), "the commissioning of "+u.Label(), check.Finding{Part: u.Label(), Message: u.Label() + " is neither commissioned nor said to wait."})
			}
		}
	},
}

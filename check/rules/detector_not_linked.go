package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleDetectorNotLinked)

var ruleDetectorNotLinked = check.Rule{
	ID: "detector-not-linked", Group: check.Air, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "A detector raises an alarm but does not shut the gas.",
	Why:     "The leak goes on while people run.",
	Mend:    "let the detector close the emergency valve",
	Sources: sources(cite.Source{Work: "IGEM/UP/11", Read: cite.Practice, Note: "as quoted"}),
	Run: func(p *check.Pass) {
		for _, d := range p.Plant.ByKind("detector") {
			if d.Get("closes").Open() || d.Undecided() {
				p.Unknown(d, "what "+d.Label()+" closes")
				continue
			}
			if len(d.Refs("closes")) == 0 {
				p.Absent(d, "what "+d.Label()+" closes", check.Finding{Message: d.Label() + " closes no valve."})
			}
		}
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&rulePumpUnwired)

var rulePumpUnwired = check.Rule{
	ID: "pump-unwired", Group: check.Electrical, Severity: lang.Error, Since: "0.1",
	Summary: "A unit pump is not wired.",
	Why:     "The unit fires without flow.",
	Mend:    "wire each pump to its own unit",
	Sources: sources(cite.Source{Work: "a pump answers to its own unit", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		el := p.Plant.Block("electrical")
		for _, u := range p.Plant.Units() {
			pump := u.Child("pump")
			if pump == nil || pump.First().Absent() {
				continue
			}
			if pump.Undecided() {
				p.Unknown(u, "the pump of "+u.Label())
				continue
			}
			if el == nil {
				p.Unknown(u, "an electrical block")
				continue
			}
			if !wired(el, pump) {
				p.Absent(u, "the wire of the pump of "+u.Label(), check.Finding{Message: "The pump of " + u.Label() + " is not wired."})
			}
		}
	},
}

// wired tells whether some wire starts at the part.
func wired(el, part *plant.Part) bool {
	for _, w := range el.Children("wire") {
		for _, s := range w.Subjects() {
			if s.Part == part {
				return true
			}
		}
	}
	return false
}

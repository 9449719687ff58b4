package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleSensorUnwired)

var ruleSensorUnwired = check.Rule{
	ID: "sensor-unwired", Group: check.Electrical, Severity: lang.Warning, Since: "0.2",
	Summary: "A sensor is not wired to a terminal.",
	Why:     "The controller regulates by a value that it does not have, or by that of another sensor.",
	Mend:    "say where its wire ends: to the panel, and the terminal",
	Sources: sources(cite.Source{Work: "one wire, one terminal", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		for _, s := range p.Plant.ByKind("sensor") {
			switch to := s.Get("to"); {
			case s.Undecided():
				p.Unknown(s, "the wire of "+s.Label())
			case !to.Given:
				p.Absent(s, "the wire of "+s.Label(), check.Finding{Message: "The sensor " + s.Label() + " is not wired."})
			case !s.Get("terminal").Given:
				p.Absent(s, "the terminal of "+s.Label(), check.Finding{Message: "The wire of the sensor " + s.Label() + " ends at no stated terminal."})
			}
		}
	},
}

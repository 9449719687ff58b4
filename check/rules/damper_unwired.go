package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleDamperUnwired)

var ruleDamperUnwired = check.Rule{
	ID: "damper-unwired", Group: check.Electrical, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "A motorized damper or a damper switch is not wired to its own unit.",
	Why:     "The unit fires against a shut damper, or stands with an open one.",
	Mend:    "wire each damper to its own unit",
	Sources: sources(cite.Source{Work: "a damper answers to its own unit", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		el := p.Plant.Block("electrical")
		for _, u := range p.Plant.Units() {
			d := u.Child("damper")
			if d == nil || d.First().Absent() {
				continue
			}
			kind, by := d.Get("kind"), d.Get("closes-by")
			switch {
			case kind.Is("motorized"), by.Is("drive"):
			case kind.Known(), by.Known():
				continue // a spring or its weight closes it
			default:
				p.Unknown(u, "whether a drive closes the damper of "+u.Label())
				continue
			}
			if el == nil {
				p.Unknown(u, "an electrical block")
				continue
			}
			if !wired(el, d) {
				p.Absent(u, "the wire of the damper of "+u.Label(), check.Finding{Message: "The damper of " + u.Label() + " is not wired."})
			}
		}
	},
}

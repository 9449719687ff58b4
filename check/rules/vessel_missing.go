package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleVesselMissing)

var ruleVesselMissing = check.Rule{
	ID: "vessel-missing", Group: check.Pressure, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "A sealed circuit has no expansion vessel.",
	Why:     "The water has nowhere to expand; the safety valves lift at each firing.",
	Mend:    "add a vessel to the circuit",
	Sources: sources(cite.Source{Work: "EN 12828", Edition: "2012+A1:2014", Read: cite.Published, Note: "extracts"}),
	Run: func(p *check.Pass) {
		s := p.Plant.Block("safety")
		if s == nil {
			if len(p.Plant.Units()) > 0 {
				p.Unknown(nil, "a safety block")
			}
			return
		}
		have := map[string]bool{}
		two := len(p.Plant.ByKind("exchanger")) > 0 && p.Plant.Block("secondary") != nil
		var sideless *plant.Part
		for _, v := range s.Children("vessel") {
			if side := v.Get("side"); side.Known() {
				have[side.Word] = true
			} else {
				sideless = v
			}
		}
		if sideless != nil && !two {
			have["primary"] = true // there is one circuit only
		} else if sideless != nil && (!have["primary"] || !have["secondary"]) {
			p.Unknown(sideless, "the circuit of "+sideless.Label())
			return
		}
		if !have["primary"] {
			p.Absent(s, "a vessel", check.Finding{Message: "The unit circuit has no expansion vessel."})
		}
		if two && !have["secondary"] {
			p.Absent(s, "a vessel", check.Finding{Message: "The circuits behind the exchanger are sealed off and have no expansion vessel."})
		}
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(check.Rule{
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
		for _, v := range s.Children("vessel") {
			side := v.Get("side").Word
			if side == "" {
				side = "primary"
			}
			have[side] = true
		}
		if !have["primary"] {
			p.Absent(s, "a vessel", check.Finding{Message: "The unit circuit has no expansion vessel."})
		}
		if len(p.Plant.ByKind("exchanger")) > 0 && p.Plant.Block("secondary") != nil && !have["secondary"] {
			p.Absent(s, "a vessel", check.Finding{Message: "The circuits behind the exchanger are sealed off and have no expansion vessel."})
		}
	},
})

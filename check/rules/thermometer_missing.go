package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleThermometerMissing)

var ruleThermometerMissing = check.Rule{
	ID: "thermometer-missing", Group: check.Pressure, Severity: lang.Warning, Since: "0.2",
	Summary: "A unit lacks a thermometer on its flow or return.",
	Why:     "Nobody can see whether a unit heats its water, or by how much.",
	Mend:    "add thermometers on flow and return",
	Sources: sources(cite.Source{Work: "EN 12828", Edition: "2012+A1:2014", Read: cite.Published, Note: "flow and return of each heat generator"}),
	Run: func(p *check.Pass) {
		for _, u := range p.Plant.Units() {
			if pump := u.Child("pump"); pump == nil || pump.First().Absent() || pump.Undecided() {
				continue // the unit's water side is not described yet
			}
			have, open := map[string]bool{}, false
			for _, t := range u.Children("thermometer") {
				for v := range t.List("sides") {
					have[v.Word] = true
					open = open || v.Open()
				}
			}
			for _, side := range [...]string{"flow", "return"} {
				if !have[side] && open {
					p.Unknown(u, "which thermometers "+u.Label()+" has")
				} else if !have[side] {
					p.Absent(u, "its thermometers", check.Finding{Message: u.Label() + " has no thermometer on its " + side + "."})
				}
			}
		}
	},
}

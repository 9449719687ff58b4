package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleUnitNotIsolated)

var ruleUnitNotIsolated = check.Rule{
	ID: "unit-not-isolated", Group: check.Water, Severity: lang.Error, Since: "0.1",
	Summary: "A unit of several lacks an isolating valve on flow or return.",
	Why:     "One unit cannot be serviced without draining the plant.",
	Mend:    "give each unit valves on flow and return",
	Sources: sources(cite.Source{Work: "EN 12828", Edition: "2012+A1:2014", Read: cite.Published, Note: "extracts"}),
	Run: func(p *check.Pass) {
		units := p.Plant.Units()
		if len(units) < 2 {
			return
		}
		for _, u := range units {
			have, open := map[string]bool{}, false
			for _, s := range u.Children("water-valve") {
				open = open || s.Undecided()
				for v := range s.List("sides") {
					have[v.Word] = true
					open = open || v.Open()
				}
			}
			if open && (!have["flow"] || !have["return"]) {
				p.Unknown(u, "the valves of "+u.Label())
				continue
			}
			missing := ""
			switch {
			case !have["flow"] && !have["return"]:
				missing = "flow and return"
			case !have["flow"]:
				missing = "flow"
			case !have["return"]:
				missing = "return"
			default:
				continue
			}
			p.Absent(u, "the valves of "+u.Label(), check.Finding{Message: u.Label() + " has no isolating valve on its " + missing + "."})
		}
	},
}

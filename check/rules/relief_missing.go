package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleReliefMissing)

var ruleReliefMissing = check.Rule{
	ID: "relief-missing", Group: check.Pressure, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "A unit has no safety valve.",
	Why:     "Heat in a closed unit raises the pressure until something bursts.",
	Mend:    "give each unit its own safety valve",
	Sources: sources(cite.Source{Work: "EN 12828", Edition: "2012+A1:2014", Read: cite.Published, Note: "extracts"}),
	Run: func(p *check.Pass) {
		for _, u := range p.Plant.Units() {
			r := u.Child("relief")
			switch {
			case r == nil:
				p.Absent(u, "the safety valve of "+u.Label(), check.Finding{Message: u.Label() + " has no safety valve."})
			case r.First().Absent():
				p.Report(u, check.Finding{Span: r.Span(), Message: u.Label() + " has no safety valve."})
			case r.Undecided():
				p.Unknown(r, "whether "+u.Label()+" has a safety valve")
			}
		}
	},
}

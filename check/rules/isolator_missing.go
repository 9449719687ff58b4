package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleIsolatorMissing)

var ruleIsolatorMissing = check.Rule{
	ID: "isolator-missing", Group: check.Electrical, Severity: lang.Warning, Since: "0.3",
	Summary: "A unit has no electrical isolator of its own, or one that cannot be locked.",
	Why:     "To work on one unit all must be switched off, or somebody works on a live one.",
	Mend:    "give each unit an isolator that can be locked off",
	Sources: sources(cite.Source{Work: "BS 7671 and practice of plant rooms", Read: cite.Memory}),
	Run: func(p *check.Pass) {
		if p.Plant.Block("electrical") == nil {
			return // not described yet
		}
		for _, u := range p.Plant.Units() {
			switch there, open := stands(u, "isolator"); {
			case open:
				p.Unknown(u, "the isolator of "+u.Label())
			case !there:
				p.Absent(u, "the isolator of "+u.Label(), check.Finding{Message: u.Label() + " has no electrical isolator of its own."})
			case !u.Child("isolator").Has("lockable"):
				p.Report(u.Child("isolator"), check.Finding{Part: u.Label(), Message: "The isolator of " + u.Label() + " cannot be locked off."})
			}
		}
	},
}

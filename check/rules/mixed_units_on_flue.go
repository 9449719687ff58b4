package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleMixedUnitsOnFlue)

var ruleMixedUnitsOnFlue = check.Rule{
	ID: "mixed-units-on-flue", Group: check.Flue, Severity: lang.Error, Device: true, Since: "0.2",
	Summary: "Units with a fan and units with natural draught share a flue.",
	Why:     "The fans press products out through the units that have none.",
	Mend:    "give each kind a flue of its own",
	Sources: sources(cite.Source{Work: "EN 13384-2", Clause: "scope", Read: cite.Published}),
	Run: func(p *check.Pass) {
		for _, fl := range p.Plant.ByKind("flue") {
			first := ""
			for _, u := range solve.OnFlue(fl) {
				d := u.Child("kind").Get("draught")
				if !d.Known() {
					continue // the kind of unit is not described
				}
				if first == "" {
					first = d.Word
				}
				if d.Word != first {
					p.Report(fl, check.Finding{Found: first + " and " + d.Word, Limit: "one kind", Message: "Units with a fan and units with natural draught share " + fl.Label() + "."})
					break
				}
			}
		}
	},
}

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
			first, other, open := "", "", ""
			units := solve.OnFlue(fl)
			for _, u := range units {
				kind := u.Child("kind")
				switch d := kind.Get("draught"); {
				case kind.Undecided() || d.Open() || kind == nil && u.Child("type").Undecided():
					open = u.Label()
				case !d.Known(): // the kind of unit is not described
				case first == "":
					first = d.Word
				case d.Word != first:
					other = d.Word
				}
			}
			switch {
			case other != "":
				p.Report(fl, check.Finding{Found: first + " and " + other, Limit: "one kind", Message: "Units with a fan and units with natural draught share " + fl.Label() + "."})
			case open != "" && len(units) > 1:
				p.Unknown(fl, "what drives the products of "+open+" (kind)")
			}
		}
	},
}

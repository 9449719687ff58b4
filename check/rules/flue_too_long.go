package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleFlueTooLong)

var ruleFlueTooLong = check.Rule{
	ID: "flue-too-long", Group: check.Flue, Severity: lang.Error, Since: "0.2",
	Summary: "The flue of a unit is longer than its data allow.",
	Why:     "The fan cannot push the products out; the unit burns badly.",
	Mend:    "shorten the flue, take bends out, or enlarge it by the maker's calculation",
	Sources: sources(cite.Source{Work: "data of the unit", Read: cite.Published}),
	Run: func(p *check.Pass) {
		for _, u := range p.Plant.Units() {
			limit := u.Child("flue-data").Child("length-limit").Get("limit")
			q := p.Results.Get(u, "flue-length", solve.Always)
			if q == nil || !limit.Known() {
				continue
			}
			if f := p.AtMost(q, p.StatedLimit(limit, q.Unit, "data of the unit")); f != nil {
				f.Message = "The flue of " + u.Label() + " counts " + f.Found + "; its data allow " + p.In(limit.Num, q.Unit) + "."
				p.Report(u, *f)
			}
		}
	},
}

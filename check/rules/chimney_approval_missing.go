package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/flue"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleChimneyApprovalMissing)

var ruleChimneyApprovalMissing = check.Rule{
	ID: "chimney-approval-missing", Group: check.Flue, Severity: lang.Error, Since: "0.1",
	Summary: "A chimney that needs approval of its height names none.",
	Why:     "From 366.4 kW gross on one chimney its height needs the council's approval; to fire without it is an offence.",
	Mend:    "get the approval and state its reference",
	Limits:  "England, Wales and Scotland; units on one chimney count together.",
	Sources: sources(flue.SourceCleanAir),
	Run: func(p *check.Pass) {
		if abroad(p.Plant) {
			return
		}
		for _, fl := range p.Plant.ByKind("flue") {
			q := p.Results.Group(fl, "input-gross", solve.Total, solve.Always)
			if !q.Known() {
				if q != nil {
					p.Unknown(fl, q.Missing)
				}
				continue
			}
			if !flue.NeedsCouncil(q.Num) || fl.Child("chimney-approval").First().Known() {
				continue
			}
			if fl.Child("chimney-approval").First().Open() {
				p.Unknown(fl, "the approval of the chimney height")
				continue
			}
			if nationOpen(p, fl) {
				continue
			}
			p.Absent(fl, "the approval", check.Finding{
				Found: p.In(q.Num, "kW") + " gross", Limit: "below 366.4 kW gross without approval", Quantity: q,
				Message: fl.Label() + " carries " + p.In(q.Num, "kW") + " gross, but no approval of the chimney height is named; it is needed from 366.4 kW.",
			})
		}
	},
}

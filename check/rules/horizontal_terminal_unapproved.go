package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/flue"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleHorizontalTerminalUnapproved)

var ruleHorizontalTerminalUnapproved = check.Rule{
	ID: "horizontal-terminal-unapproved", Group: check.Flue, Severity: lang.Error, Since: "0.2",
	Summary: "A flue of more than 135 kW net ends through a wall without the agreement of the health officer.",
	Why:     "The plume of a large flue at low level reaches people and windows.",
	Mend:    "get the agreement and state it (health-approval), or end above the roof",
	Sources: sources(flue.SourceApprovals),
	Run: func(p *check.Pass) {
		if abroad(p.Plant) {
			return
		}
		for _, fl := range p.Plant.ByKind("flue") {
			t := fl.Child("terminal")
			place := t.Get("place")
			if !place.Is("wall") && !place.Open() || fl.Child("health-approval") != nil {
				continue
			}
			q := p.Results.Get(t, "net-input", solve.Always)
			switch {
			case q == nil:
			case !q.Known():
				p.Unknown(t, q.Missing)
			case !flue.NeedsHealth(q.Num):
			case place.Open():
				p.Unknown(t, "whether "+t.Label()+" ends through a wall or above a roof")
			case nationOpen(p, t):
			default:
				p.Absent(t, "the agreement of the health officer", check.Finding{Found: p.In(q.Num, "kW") + " net", Limit: "up to 135 kW net without agreement", Quantity: q, Message: t.Label() + " lets " + p.In(q.Num, "kW") + " net out through a wall; the health officer must agree."})
			}
		}
	},
}

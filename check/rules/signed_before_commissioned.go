package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/lang"
)

var _ = register(&ruleSignedBeforeCommissioned)

var ruleSignedBeforeCommissioned = check.Rule{
	ID: "signed-before-commissioned", Group: check.Record, Severity: lang.Error, Since: "0.2",
	Summary: "The plant was signed for before a unit was commissioned.",
	Why:     "The keeper takes over what nobody has proved.",
	Mend:    "correct the date, or have it signed again",
	Sources: sources(sourceRecord),
	Run: func(p *check.Pass) {
		for _, s := range recorded(p, "handed-over").Children("signed") {
			signed, ok := day(s, "date")
			if s.Get("date").Open() {
				p.Unknown(s, "the day of the signature")
			}
			if !ok {
				continue
			}
			for _, c := range commissioned(p.Plant) {
				if d, ok := day(c.part, "date"); ok && signed.Before(d) && !before(p, signed) {
					p.Report(s, check.Finding{Span: s.Get("date").Span(), Found: signed.String(), Limit: "not before " + d.String(), Message: "The plant was signed for on " + signed.String() + "; " + c.unit.Label() + " was commissioned on " + d.String() + "."})
					break
				}
			}
		}
	},
}

// before tells a day earlier than the revision of the design, of which
// date-impossible speaks.
func before(p *check.Pass, d lang.Date) bool {
	if p.Plant.Of == nil {
		return false
	}
	built, ok := day(p.Plant.Of.One("plant"), "date")
	return ok && d.Before(built)
}

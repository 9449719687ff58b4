package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/lang"
)

var _ = register(&ruleDeviationExpired)

var ruleDeviationExpired = check.Rule{
	ID: "deviation-expired", Group: check.Intent, Severity: lang.Error, Last: true, Since: "0.1",
	Summary: "A deviation is past its last day.",
	Why:     "The exception was accepted for a time; after it the rule counts again.",
	Mend:    "mend the fault, or have the deviation renewed",
	Limits:  "Needs the date of the check (--today); without one it is not evaluated.",
	Sources: sources(designersOwn),
	Run: func(p *check.Pass) {
		for _, d := range p.Plant.ByKind("deviation") {
			until := d.Get("until")
			if !until.Known() {
				p.Unknown(d, "the last day of the deviation (until)")
				continue
			}
			expired, known := p.Expired(d)
			if !known {
				p.Unknown(d, "the date of the check (--today)")
				continue
			}
			if expired {
				p.Report(d, check.Finding{Part: "deviation", Span: until.Span(), Found: until.Word, Limit: "not before " + p.Today.String(), Message: "The deviation from " + d.Get("rule").Word + " ended on " + until.Word + "."})
			}
		}
	},
}

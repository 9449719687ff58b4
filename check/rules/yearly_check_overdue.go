package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/lang"
)

var _ = register(&ruleYearlyCheckOverdue)

var ruleYearlyCheckOverdue = check.Rule{
	ID: "yearly-check-overdue", Group: check.Record, Severity: lang.Warning, Since: "0.2",
	Summary: "The last yearly log is more than 13 months old, or there is none.",
	Why:     "Dampers, traps and burners are looked at once a year because they fail unseen.",
	Mend:    "have the plant checked and log it",
	Sources: sources(sourceRecord),
	Run: func(p *check.Pass) {
		done := commissioned(p.Plant)
		if len(done) == 0 || recorded(p, "handed-over") == nil {
			return // not in service yet
		}
		if p.Today.IsZero() {
			p.Unknown(p.Plant.One("record"), "the date of the check (--today)")
			return
		}
		last := lang.Date{}
		for _, c := range done {
			if d, ok := day(c.part, "date"); ok && last.Before(d) {
				last = d
			}
		}
		for _, l := range p.Plant.ByKind("log") {
			if d, ok := day(l, "date"); ok && last.Before(d) {
				last = d
			}
		}
		most := p.Limit("log-months-most")
		if p.Today.Days()-last.Days() > int(most.Num*30.4375+1) {
			p.Report(p.Plant.One("record"), check.Finding{Found: last.String(), Limit: "within " + lang.Num(most.Num, 3) + " months", Source: most.Source, Message: "The plant was last measured on " + last.String() + ", more than " + lang.Num(most.Num, 3) + " months ago."})
		}
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleLimiterMissing)

var ruleLimiterMissing = check.Rule{
	ID: "limiter-missing", Group: check.Pressure, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "A unit has no temperature limiter.",
	Why:     "When the control fails nothing stops the burner.",
	Mend:    "give each unit a limiter with manual reset",
	Sources: sources(cite.Source{Work: "EN 12828", Edition: "2012+A1:2014", Read: cite.Memory, Note: "limiter up to 110 degC, mostly inside the unit"}),
	Run: func(p *check.Pass) {
		most := p.Limit("limiter-most")
		for _, u := range p.Plant.Units() {
			l := u.Child("limiter")
			switch v := l.Get("setting"); {
			case l.Undecided():
				p.Unknown(l, "whether "+u.Label()+" has a limiter")
			case l == nil || l.First().Absent():
				f := check.Finding{Message: u.Label() + " has no temperature limiter."}
				if l != nil {
					f.Span = l.Span()
				}
				p.Absent(u, "the limiter of "+u.Label(), f)
			case v.Open():
				p.Unknown(l, "at what temperature the limiter of "+u.Label()+" acts")
			case v.Known() && v.Num > most.Num:
				p.Report(u, check.Finding{Span: v.Span(), Severity: lang.Warning, Found: p.In(v.Num, "degC"), Limit: "at most " + most.Text(), Source: most.Source, Message: "The limiter of " + u.Label() + " acts at " + p.In(v.Num, "degC") + "; the most is " + most.Text() + "."})
			}
		}
	},
}

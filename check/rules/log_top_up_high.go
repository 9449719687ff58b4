package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/lang"
)

var _ = register(&ruleLogTopUpHigh)

var ruleLogTopUpHigh = check.Rule{
	ID: "log-top-up-high", Group: check.Record, Severity: lang.Warning, Since: "0.2",
	Summary: "By the log more water is topped up than a tight plant loses.",
	Why:     "Each top-up brings hardness and oxygen; the exchangers scale and the steel rusts.",
	Mend:    "find the leak, or check the vessel",
	Limits:  "Counts the days since the log before, or since the commissioning.",
	Sources: sources(sourceRecord),
	Run: func(p *check.Pass) {
		before := lang.Date{}
		for _, c := range commissioned(p.Plant) {
			if d, ok := day(c.part, "date"); ok && before.Before(d) {
				before = d
			}
		}
		share := p.Limit("top-up-share-most")
		for _, l := range p.Plant.ByKind("log") {
			since := before
			now, ok := day(l, "date")
			if ok {
				before = now
			}
			t := l.Child("top-up")
			v := t.Get("volume")
			if v.Open() {
				p.Unknown(t, "the volume that was topped up")
			}
			if v.Num == 0 { // nothing stated, or nothing added
				continue
			}
			if !ok {
				p.Unknown(t, "the day of the log")
				continue
			}
			if noDesign(p, t) {
				return
			}
			content := 0.0
			for _, c := range p.Plant.Of.Block("safety").Children("content") {
				content += c.Get("volume").Num
			}
			if content == 0 || since.IsZero() || !since.Before(now) {
				p.Unknown(t, "the water content of the design and the day of the readings before")
				continue
			}
			years := max(1, float64(now.Days()-since.Days())/365.25)
			most := share.Num * content * years
			if v.Num > most*(1+1e-9) {
				p.Report(t, check.Finding{Part: "log", Span: v.Span(), Found: p.In(v.Num, "l"), Limit: "at most " + p.In(most, "l"), Source: share.Source, Message: "Since " + since.String() + " " + p.In(v.Num, "l") + " were topped up; a tight plant of this content takes " + p.In(most, "l") + " at most."})
			}
		}
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleWorkOutOfOrder)

var ruleWorkOutOfOrder = check.Rule{
	ID: "work-out-of-order", Group: check.Record, Severity: lang.Error, Since: "0.2",
	Summary: "Work was done before what it depends on.",
	Why:     "Gas was let in before the pipe was known to be tight, or a unit fired before its pipes were purged.",
	Mend:    "clear up what really was done when; repeat the test where it came too late",
	Sources: sources(sourceRecord),
	Run: func(p *check.Pass) {
		last := map[string]lang.Date{}
		at := map[string]*plant.Part{}
		t := recorded(p, "tested")
		for _, kind := range [...]string{"strength", "tightness", "purge"} {
			for _, s := range t.Children(kind) {
				if d, ok := day(s, "date"); ok && (at[kind] == nil || last[kind].Before(d)) {
					last[kind], at[kind] = d, s
				}
			}
		}
		say := func(part *plant.Part, what string, d lang.Date, before string) {
			if at[before] != nil && d.Before(last[before]) {
				p.Report(part, check.Finding{Found: d.String(), Limit: "not before " + last[before].String(), Message: what + " on " + d.String() + ", before the " + before + " test of " + last[before].String() + ".", Related: []lang.Related{{Span: at[before].Span(), Message: "the " + before + " test"}}})
			}
		}
		if at["purge"] != nil {
			say(at["purge"], "Gas was let in", last["purge"], "tightness")
		}
		for _, c := range commissioned(p.Plant) {
			if d, ok := day(c.part, "date"); ok {
				say(c.part, c.unit.Label()+" was fired", d, "tightness")
				say(c.part, c.unit.Label()+" was fired", d, "purge")
				say(c.part, c.unit.Label()+" was fired", d, "strength")
			}
		}
	},
}

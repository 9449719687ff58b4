package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleTestNotPassed)

var ruleTestNotPassed = check.Rule{
	ID: "test-not-passed", Group: check.Record, Severity: lang.Error, Since: "0.2",
	Summary: "A test failed, or lost pressure that it may not lose.",
	Why:     "What leaks at the test leaks in service.",
	Mend:    "mend the leak and test again",
	Sources: sources(sourceRecord),
	Run: func(p *check.Pass) {
		t := recorded(p, "tested")
		for _, kind := range [...]string{"strength", "tightness", "purge", "flushing"} {
			for _, s := range t.Children(kind) {
				var f check.Finding
				if r, v := s.Get("result"), s.Get("fell"); r.Is("failed") {
					f = check.Finding{Span: r.Span(), Message: "The " + kind + " test failed."}
				} else if v.Known() && v.Num > 1 { // 1 Pa: nothing that a gauge shows
					f = check.Finding{Span: v.Span(), Found: p.In(v.Num, "mbar"), Limit: "no fall", Message: "At the " + kind + " test the pressure fell by " + p.In(v.Num, "mbar") + "."}
				} else {
					continue
				}
				if again, open := repeated(t, s); open {
					p.Unknown(s, "the day and the result of each "+kind+" test: one of them failed")
				} else if !again {
					p.Report(s, f)
				}
			}
		}
	},
}

// repeated tells a test of which every part was passed again; open is set where
// it is not known of each whether that was on a later day.
func repeated(tested, s *plant.Part) (again, open bool) {
	if s.Kind == "flushing" {
		return passedLater(tested, s, func(o *plant.Part) bool { return sameFlushing(o, s) })
	}
	for _, r := range s.Subjects() {
		later, unsure := passedLater(tested, s, func(o *plant.Part) bool { return speaksOf(o, r.Part) })
		if !later && !unsure {
			return false, false
		}
		again, open = true, open || unsure
	}
	return again, open
}

// passedLater looks for a later test than s among those that count.
func passedLater(tested, s *plant.Part, counts func(*plant.Part) bool) (later, unsure bool) {
	then, dated := day(s, "date")
	for _, o := range tested.Children(s.Kind) {
		result := o.Get("result")
		if o == s || !result.Is("passed") && !result.Open() || !counts(o) {
			continue
		}
		switch d, ok := day(o, "date"); {
		case dated && ok && !then.Before(d):
		case !dated || !ok || result.Open():
			unsure = true
		default:
			return true, false
		}
	}
	return false, unsure
}

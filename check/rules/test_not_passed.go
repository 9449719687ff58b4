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
				if repeated(t, s) {
					continue
				}
				if r := s.Get("result"); r.Is("failed") {
					p.Report(s, check.Finding{Span: r.Span(), Message: "The " + kind + " test failed."})
					continue
				}
				if v := s.Get("fell"); v.Known() && v.Num > 1 { // 1 Pa: nothing that a gauge shows
					p.Report(s, check.Finding{Span: v.Span(), Found: p.In(v.Num, "mbar"), Limit: "no fall", Message: "At the " + kind + " test the pressure fell by " + p.In(v.Num, "mbar") + "."})
				}
			}
		}
	},
}

// repeated tells a test that was passed on the same parts on a later day.
func repeated(tested, s *plant.Part) bool {
	then, ok := day(s, "date")
	for _, o := range tested.Children(s.Kind) {
		if d, dated := day(o, "date"); ok && dated && then.Before(d) && o.Get("result").Is("passed") && (sameSubjects(o, s) || len(o.Subjects()) == 0 && o.Get("side").Word == s.Get("side").Word) {
			return true
		}
	}
	return false
}

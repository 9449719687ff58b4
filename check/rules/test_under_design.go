package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(check.Rule{
	ID: "test-under-design", Group: check.Record, Severity: lang.Error, Since: "0.2",
	Summary: "A test was made with less than the specification asks for.",
	Why:     "A test that is too weak or too short finds nothing.",
	Mend:    "test again as specified",
	Sources: sources(sourceDesign),
	Run: func(p *check.Pass) {
		t := recorded(p, "tested")
		if t == nil || noDesign(p, t) {
			return
		}
		say := func(s *plant.Part, what string, have, want plant.Value, unit string) {
			if have.Known() && want.Known() && have.Num < want.Num*(1-1e-6) {
				p.Report(s, check.Finding{Span: have.Span(), Found: lang.In(have.Num, unit), Limit: "at least " + lang.In(want.Num, unit), Message: what + " " + lang.In(have.Num, unit) + "; the specification asks for " + lang.In(want.Num, unit) + "."})
			}
		}
		tests := p.Plant.Of.Block("tests")
		for _, kind := range [...]string{"strength", "tightness"} {
			for _, s := range t.Children(kind) {
				for _, d := range tests.Children(kind) {
					if !sameSubjects(s, d) {
						continue
					}
					unit := "bar"
					if kind == "tightness" {
						unit = "mbar"
					}
					say(s, "The "+kind+" test was made at", s.Get("pressure"), d.Get("pressure"), unit)
					say(s, "The "+kind+" test was held for", s.Get("time"), d.Get("time"), "min")
				}
			}
		}
		for _, s := range t.Children("purge") {
			for _, d := range tests.Children("purge") {
				say(s, "The purge let through", s.Get("volume"), d.Get("volume"), "m3")
			}
		}
	},
})

// sameSubjects tells two statements that speak of a part in common.
func sameSubjects(a, b *plant.Part) bool {
	for _, x := range a.Subjects() {
		for _, y := range b.Subjects() {
			if x.Part == y.Part {
				return true
			}
		}
	}
	return false
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/lang"
)

var _ = register(&ruleTestMissing)

var ruleTestMissing = check.Rule{
	ID: "test-missing", Group: check.Record, Severity: lang.Error, Since: "0.2",
	Summary: "A test that the specification asks for is not recorded.",
	Why:     "What was not tested is not known to hold.",
	Mend:    "make the test, or record it",
	Sources: sources(sourceDesign),
	Run: func(p *check.Pass) {
		if len(p.Plant.ByKind("commissioned")) == 0 {
			return // the tests may still come
		}
		if noDesign(p, p.Plant.One("record")) {
			return
		}
		t := recorded(p, "tested")
		for _, kind := range [...]string{"strength", "tightness", "purge", "flushing"} {
			for _, d := range p.Plant.Of.Block("tests").Children(kind) {
				done := false
				for _, s := range t.Children(kind) {
					done = done || sameSubjects(s, d) || kind == "flushing" && sameFlushing(s, d)
				}
				if !done {
					what := map[string]string{"strength": "the strength test", "tightness": "the tightness test", "purge": "the purge", "flushing": "the flushing"}[kind]
					p.Absent(p.Plant.One("record"), what, check.Finding{Message: "Units were commissioned, but " + what + " that the specification asks for is not recorded."})
				}
			}
		}
	},
}

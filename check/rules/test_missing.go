package rules

import (
	"strings"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
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
				left, all := untested(t.Children(kind), d)
				what := "the " + testName(kind)
				switch {
				case len(left) == 0 && !all:
					continue
				case !all:
					what += " of " + strings.Join(left, ", ")
				}
				p.Absent(p.Plant.One("record"), what, check.Finding{Message: "Units were commissioned, but " + what + " that the specification asks for is not recorded."})
			}
		}
	},
}

// untested lists the parts of a test of the specification that no recorded test
// speaks of; all is set when none speaks of any. A flushing is of a circuit.
func untested(done []*plant.Part, asked *plant.Part) (left []string, all bool) {
	all = true
	if asked.Kind == "flushing" {
		for _, s := range done {
			all = all && !sameFlushing(s, asked)
		}
		return nil, all
	}
	tested := map[*plant.Part]bool{} // the names may be of the record or of the plant
	for _, s := range done {
		for _, r := range s.Subjects() {
			tested[r.Part] = true
		}
	}
	for _, r := range asked.Subjects() {
		if tested[r.Part] {
			all = false
		} else {
			left = append(left, r.Part.Label())
		}
	}
	return left, all
}

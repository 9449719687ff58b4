package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleTestUnderDesign)

var ruleTestUnderDesign = check.Rule{
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
		say := func(s, d *plant.Part, slot, unit, did string) {
			have, want := s.Get(slot), d.Get(slot)
			switch {
			case want.Known() && !have.Known():
				p.Unknown(s, "the "+slot+" of the "+testName(s.Kind))
			case have.Known() && want.Open():
				p.Unknown(s, "the "+slot+" that the specification asks of the "+testName(s.Kind))
			case want.Known() && have.Num < want.Num*(1-1e-6):
				p.Report(s, check.Finding{Span: have.Span(), Found: p.In(have.Num, unit), Limit: "at least " + p.In(want.Num, unit), Message: "The " + testName(s.Kind) + " " + did + " " + p.In(have.Num, unit) + "; the specification asks for " + p.In(want.Num, unit) + "."})
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
					say(s, d, "pressure", unit, "was made at")
					say(s, d, "time", "min", "was held for")
				}
			}
		}
		for _, s := range t.Children("purge") {
			for _, d := range tests.Children("purge") {
				say(s, d, "volume", "m3", "let through")
			}
		}
		for _, s := range t.Children("flushing") {
			for _, d := range tests.Children("flushing") {
				if sameFlushing(s, d) {
					say(s, d, "volume", "l", "took")
				}
			}
		}
		computed(p, t, "purge", "volume", "purge-volume", "m3", "let through")
		computed(p, t, "tightness", "time", "test-time", "min", "was held for")
	},
}

// computed holds a recorded test of the gas run against what the volume of the
// installation needs, where the specification does not ask for more.
func computed(p *check.Pass, tested *plant.Part, kind, slot, name, unit, did string) {
	gasRun := p.Plant.Of.Block("gas-run")
	q := p.Design.Get(gasRun, name, solve.Always)
	if q == nil {
		return
	}
	for _, s := range tested.Children(kind) {
		about := false
		for _, ref := range s.Subjects() {
			about = about || ref.Part == gasRun
		}
		v := s.Get(slot)
		if !about || !v.Known() {
			continue
		}
		if !q.Known() {
			p.Unknown(s, q.Missing)
			continue
		}
		asked := false // more than was done: said already
		for _, d := range p.Plant.Of.Block("tests").Children(kind) {
			asked = asked || d.Get(slot).Known() && v.Num < d.Get(slot).Num*(1-1e-6)
		}
		if !asked && v.Num < q.Num*(1-1e-6) {
			p.Report(s, check.Finding{Span: v.Span(), Found: p.In(v.Num, unit), Limit: "at least " + p.In(q.Num, unit), Quantity: q, Source: q.Formula.Source, Message: "The " + testName(kind) + " " + did + " " + p.In(v.Num, unit) + "; the volume of this gas run needs " + p.In(q.Num, unit) + "."})
		}
	}
}

// testName is how a message speaks of a test of a kind.
func testName(kind string) string {
	if kind == "strength" || kind == "tightness" {
		return kind + " test"
	}
	return kind
}

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

// sameFlushing tells two statements of the flushing of the same circuit.
func sameFlushing(a, b *plant.Part) bool { return a.Get("side").Word == b.Get("side").Word }

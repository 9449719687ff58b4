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
		say := func(s, d *plant.Part, slot, unit, did string, met, open bool) {
			have, want := s.Get(slot), d.Get(slot)
			switch {
			case met:
			case want.Known() && !have.Known():
				p.Unknown(s, "the "+slot+" of the "+testName(s.Kind))
			case have.Known() && want.Open():
				p.Unknown(s, "the "+slot+" that the specification asks of the "+testName(s.Kind))
			case want.Known() && have.Num < want.Num*(1-1e-6) && open:
				p.Unknown(s, "whether another "+testName(s.Kind)+" was as the specification asks")
			case want.Known() && have.Num < want.Num*(1-1e-6):
				p.Report(s, check.Finding{Span: have.Span(), Found: p.In(have.Num, unit), Limit: "at least " + p.In(want.Num, unit), Message: "The " + testName(s.Kind) + " " + did + " " + p.In(have.Num, unit) + "; the specification asks for " + p.In(want.Num, unit) + "."})
			}
		}
		for _, kind := range [...]string{"strength", "tightness", "purge", "flushing"} {
			for _, s := range t.Children(kind) {
				for _, d := range p.Plant.Of.Block("tests").Children(kind) {
					if !sameTest(s, d) {
						continue
					}
					met, open := metByOthers(t, s, d)
					for _, v := range askedOf[kind] {
						say(s, d, v.slot, v.unit, v.did, met, open)
					}
				}
			}
		}
		computed(p, t, "purge", "volume", "purge-volume", "m3", "let through")
		computed(p, t, "tightness", "time", "test-time", "min", "was held for")
	},
}

// askedOf lists what a specification asks of each kind of test.
var askedOf = map[string][]struct{ slot, unit, did string }{
	"strength":  {{"pressure", "bar", "was made at"}, {"time", "min", "was held for"}},
	"tightness": {{"pressure", "mbar", "was made at"}, {"time", "min", "was held for"}},
	"purge":     {{"volume", "m3", "let through"}},
	"flushing":  {{"volume", "l", "took"}},
}

// metByOthers tells that further tests of each part were as asked: a first one at
// less is then no fault. It is open where they may have been.
func metByOthers(tested, s, d *plant.Part) (met, open bool) {
	if s.Kind == "flushing" {
		return asAsked(tested, s, d, func(o *plant.Part) bool { return sameFlushing(o, s) || !o.Get("side").Known() })
	}
	for _, r := range s.Subjects() {
		yes, maybe := asAsked(tested, s, d, func(o *plant.Part) bool { return speaksOf(o, r.Part) })
		if !yes && !maybe {
			return false, false
		}
		met, open = true, open || maybe
	}
	return met && !open, open
}

// asAsked looks for a test other than s that was as d asks, among those that count.
func asAsked(tested, s, d *plant.Part, counts func(*plant.Part) bool) (yes, maybe bool) {
	for _, o := range tested.Children(s.Kind) {
		result := o.Get("result")
		if o == s || result.Is("failed") || !counts(o) {
			continue
		}
		sure, less := !result.Open() && o.Get("side").Word == s.Get("side").Word, false
		for _, v := range askedOf[s.Kind] {
			want, have := d.Get(v.slot), o.Get(v.slot)
			sure = sure && have.Known()
			less = less || have.Known() && have.Num < want.Num*(1-1e-6)
		}
		if sure && !less {
			return true, false
		}
		maybe = maybe || !less
	}
	return false, maybe
}

// computed holds a recorded test of the gas run against what the volume of the
// installation needs, where the specification does not ask for more.
func computed(p *check.Pass, tested *plant.Part, kind, slot, name, unit, did string) {
	gasRun := p.Plant.Of.Block("gas-run")
	q := p.Design.Get(gasRun, name, solve.Always)
	if q == nil {
		return
	}
	open := false
	for _, s := range tested.Children(kind) {
		v, result := s.Get(slot), s.Get("result")
		if !speaksOf(s, gasRun) || result.Is("failed") {
			continue
		}
		if v.Known() && !result.Open() && q.Known() && v.Num >= q.Num*(1-1e-6) {
			return
		}
		open = open || !v.Known() || result.Open() && v.Num >= q.Num*(1-1e-6)
	}
	for _, s := range tested.Children(kind) {
		v := s.Get(slot)
		if !speaksOf(s, gasRun) || !v.Known() {
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
		switch {
		case asked || v.Num >= q.Num*(1-1e-6):
		case open:
			p.Unknown(s, "whether another "+testName(kind)+" was as the volume of this gas run needs")
		default:
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

// speaksOf tells a statement that names a part.
func speaksOf(s, part *plant.Part) bool {
	for _, r := range s.Subjects() {
		if r.Part == part {
			return true
		}
	}
	return false
}

// sameSubjects tells two statements that speak of a part in common.
func sameSubjects(a, b *plant.Part) bool {
	for _, r := range a.Subjects() {
		if speaksOf(b, r.Part) {
			return true
		}
	}
	return false
}

// sameFlushing tells two statements of the flushing of the same circuit.
func sameFlushing(a, b *plant.Part) bool { return a.Get("side").Word == b.Get("side").Word }

// sameTest tells two tests of a kind that have a part or the circuit in common.
func sameTest(a, b *plant.Part) bool {
	if a.Kind == "flushing" {
		return sameFlushing(a, b)
	}
	return sameSubjects(a, b)
}

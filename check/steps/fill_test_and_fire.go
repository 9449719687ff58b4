package steps

import (
	"strings"

	"example.org/tundish/check/calc/pressuretest"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

func fillWiring(b *builder, s *Step) {
	s.units = b.p.Units()
	for _, w := range b.p.ByKind("wire") {
		var to []string
		for _, t := range w.Refs("to") {
			to = append(to, t.Part.Label())
		}
		var from []string
		for _, x := range w.Subjects() {
			if x.Part.Kind != "" {
				from = append(from, x.Part.Address())
			}
		}
		if len(from) == 0 || len(to) == 0 {
			continue
		}
		text := "wire " + ends(from) + " to " + ends(to)
		if len(from) == len(to) && len(to) > 1 {
			text += ", each to its own unit"
		}
		if t := w.Get("terminal"); t.Known() {
			text += ", terminal " + t.Word
		}
		s.check(w, text)
	}
	for _, sen := range b.p.ByKind("sensor") {
		if t := sen.Get("terminal"); t.Known() {
			s.check(sen, sen.Label()+" to terminal "+t.Word)
		}
	}
	s.Checks = append(s.Checks, Note{Text: "isolated, locked off and proved dead before a casing is opened"})
}

// ends names a list by its ends.
func ends(list []string) string {
	if len(list) < 3 {
		return strings.Join(list, ", ")
	}
	return list[0] + " to " + list[len(list)-1] + " (" + lang.Num(float64(len(list)), 4) + ")"
}

// names of what a test speaks of.
func subjects(p *plant.Part) string {
	var out []string
	for _, s := range p.Subjects() {
		out = append(out, s.Part.Label())
	}
	return strings.Join(out, ", ")
}

// test prints a stated test.
func (b *builder) test(t *plant.Part) string {
	out := subjects(t)
	if m := t.Get("medium"); m.Known() {
		out += " with " + strings.ReplaceAll(m.Word, "-", " ")
	}
	out += ", " + b.said(t.Get("pressure"))
	if v := t.Get("time"); v.Known() {
		out += " for " + b.said(v)
	}
	if v := t.Get("settle"); v.Known() {
		out += " after " + b.said(v) + " to settle"
	}
	for _, f := range [...]string{"relief-isolated", "units-isolated", "vessels-isolated"} {
		if t.Has(f) {
			out += ", " + strings.ReplaceAll(f, "-", " ")
		}
	}
	return out
}

// needed prints a required value of a test.
func (b *builder) needed(s *Step, q *solve.Quantity, what string) {
	switch {
	case q == nil:
	case !q.Known():
		s.Open = append(s.Open, Gap{q.Missing, ref(q.Part)})
	default:
		show := b.quantity(q.Num, q.Dim)
		if u, ok := lang.LookupUnit(q.Unit); ok && (b.sys == lang.Metric || u.US) {
			show = lang.In(q.Num, q.Unit)
		}
		n := Note{Text: what + " " + show, From: ref(q.Part)}
		if q.Formula != nil {
			n.Source = q.Formula.Source
		}
		s.Checks = append(s.Checks, n)
	}
}

func fillStrength(b *builder, s *Step) {
	list := tests(b, "strength", false)
	for _, t := range list {
		s.check(t, b.test(t)+"; no fall")
		b.needed(s, b.res.Get(t, "needed-pressure", solve.Always), "at least")
		b.needed(s, b.res.Get(t, "weakest-rating", solve.Always), "the weakest part that stays in the test is rated")
		if m := t.Get("medium"); m.Is("air") || m.Is("nitrogen") {
			s.check(t, "the energy stored in the gas is assessed, the room is empty while the pressure rises")
		}
	}
	if len(list) == 0 {
		for _, w := range known(watery(b)) {
			s.open(w, "the strength test (tests ... strength)")
		}
	}
	s.practice("it settles for "+b.quantity(pressuretest.Settle, lang.Time)+" before the reading", pressuretest.SourceWater)
	b.hold(s, "The pressure held and every joint was seen dry; what was isolated is open again and safety valves are back", b.people(byFitter, "fitter"))
}

func flushing(b *builder) []*plant.Part {
	out := append([]*plant.Part(nil), b.p.Block("tests").Children("flushing")...)
	if f := b.p.Block("water-quality").Child("flush"); f != nil && !f.First().Absent() {
		out = append(out, f)
	}
	return out
}

func fillFlushing(b *builder, s *Step) {
	for _, t := range b.p.Block("tests").Children("flushing") {
		text := b.said(t.Get("volume"))
		if v := t.Get("side"); v.Known() {
			text += " through the " + v.Word + " circuit"
		}
		if v := t.Get("velocity"); v.Known() {
			text += " at " + b.said(v)
		}
		s.check(t, strings.TrimSpace(text)+"; strainers cleaned after it")
	}
	if f := b.p.Block("water-quality").Child("flush"); f != nil {
		text := "flushed " + strings.ReplaceAll(f.Get("when").Word, "-", " ")
		var what []string
		for _, r := range f.Refs("parts") {
			what = append(what, r.Part.Address())
		}
		if len(what) > 0 {
			text += ": " + strings.Join(what, ", ")
		}
		s.check(f, text)
	}
	b.hold(s, "The water runs clear and a sample is taken", b.people(byFitter, "fitter"))
}

func fillInsulation(b *builder, s *Step) {
	for _, x := range b.p.ByKind("bare") {
		s.check(x, "left bare: "+ends(addresses(x.Subjects())))
	}
	s.practice("drains, vents, labels and bonnets of safety valves stay free", sourceFitting)
}

func fillFill(b *builder, s *Step) {
	for _, f := range b.p.Block("safety").Children("fill") {
		text := "cold fill " + b.said(f.Get("pressure"))
		if v := f.Get("side"); v.Known() {
			text += ", " + v.Word
		}
		s.check(f, text)
	}
	if w := b.p.Block("water-quality").Child("fill-water"); w.First().Known() {
		s.check(w, "fill water "+w.First().Word+", its volume metered")
	}
	for _, c := range b.p.Block("safety").Children("content") {
		text := "about " + b.said(c.Get("volume"))
		if v := c.Get("side"); v.Known() {
			text += ", " + v.Word
		}
		s.check(c, text)
	}
	s.practice("every high point vented, pumps free of air", sourceFitting)
	s.practice("every trap filled with water", sourceFitting)
	b.hold(s, "Plant full, vented and without leak; traps primed", b.people(byFitter, "fitter"))
}

func fillGasStrength(b *builder, s *Step) {
	for _, t := range tests(b, "strength", true) {
		s.check(t, b.test(t)+"; no fall")
	}
	b.hold(s, "The pressure held", b.people(byGas, "gas-engineer"))
}

func fillTightness(b *builder, s *Step) {
	list := tests(b, "tightness", true)
	for _, t := range list {
		text := b.test(t)
		if v := t.Get("gauge"); v.Known() {
			text += ", " + strings.ReplaceAll(v.Word, "-", " ")
		}
		if v := t.Get("by-standard"); v.Known() {
			text += ", by " + v.Word
		}
		s.check(t, text+"; no fall that the gauge shows")
	}
	run := b.p.Block("gas-run")
	if len(list) == 0 {
		s.open(run, "the tightness test (tests ... tightness)")
	}
	b.needed(s, b.res.Get(run, "installation-volume", solve.Always), "installation volume")
	b.needed(s, b.res.Get(run, "test-pressure", solve.Always), "with at least")
	b.needed(s, b.res.Get(run, "test-time", solve.Always), "held for at least")
	b.hold(s, "The gas pipes are proved tight and the reading is signed", b.people(byGas, "gas-engineer"))
}

func fillElectricalTest(b *builder, s *Step) {
	for _, x := range b.p.Block("electrical").Children("bonding") {
		s.check(x, "bonding of the pipes measured")
	}
	for _, x := range b.p.Block("electrical").Children("residual-current") {
		s.check(x, "residual current device trips at "+b.said(x.First()))
	}
	for _, i := range b.p.ByKind("interlock") {
		s.check(i, "interlock "+ends(addresses(i.Subjects()))+" stops what it is to stop")
	}
	for _, d := range b.p.ByKind("detector") {
		s.check(d, d.Label()+" shuts the gas at its trip")
	}
	for _, st := range b.p.ByKind("stop") {
		s.check(st, st.Label()+" shuts the gas and stays until it is reset")
	}
	b.hold(s, "Every interlock, detector and stop acted, with gas shut", b.people(byElectric, "electrician"))
}

func addresses(list []plant.Ref) []string {
	var out []string
	for _, r := range list {
		out = append(out, r.Part.Address())
	}
	return out
}

func fillPurge(b *builder, s *Step) {
	run := b.p.Block("gas-run")
	list := b.p.Block("tests").Children("purge")
	for _, t := range list {
		text := b.said(t.Get("volume"))
		if r, ok := t.Ref("through"); ok {
			text += " through " + r.Part.Label()
		}
		if v := t.Get("rate"); v.Known() {
			text += " at " + b.said(v)
		}
		s.check(t, text)
	}
	if len(list) == 0 {
		s.open(run, "the purge (tests ... purge)")
	}
	b.needed(s, b.res.Get(run, "purge-volume", solve.Always), "at least")
	b.needed(s, b.res.Get(run, "purge-rate", solve.Always), "at a rate of at least")
	s.practice("no source of ignition, openings free, the vented gas ends in the open", sourceGasWork)
	b.hold(s, "The pipes hold gas and no air; every unit valve is shut again", b.people(byGas, "gas-engineer"))
}

func fillFirstFire(b *builder, s *Step) {
	s.units = b.p.Units()
	s.practice("one unit at a time, at minimum rate first", sourceGasWork)
	s.practice("flue, air for combustion, working pressure or heat input and safe operation are examined", sourceFirst)
	for _, u := range firsts(b.p.Units(), "damper") {
		s.check(u.Child("damper"), "the damper of each stopped unit is seen to be closed while others fire")
	}
	b.hold(s, "Each unit fires safely and no products come back through a stopped one", b.people(byCommission, "gas-engineer", "commissioning-engineer"))
}

func fillCommissioning(b *builder, s *Step) {
	s.units = b.p.Units()
	s.Checks = append(s.Checks, Note{Text: "readings of every unit at maximum and minimum rate, by serial number (record)"})
	if g := b.p.UnitGroup(); g != nil {
		b.needed(s, b.res.Group(g, "gas-pressure", solve.Least, solve.AllFull), "gas pressure with every unit firing: the least computed is")
	}
	for _, x := range b.p.ByKind("set-point") {
		s.check(x, "flow set point "+b.said(x.First()))
	}
	b.hold(s, "Every reading lies in its limits and the safety chain is proved", b.people(byCommission, "gas-engineer", "commissioning-engineer"))
}

func fillHandover(b *builder, s *Step) {
	h := b.p.Block("handover")
	for _, d := range h.Children("document") {
		var names []string
		for v := range d.List("documents") {
			names = append(names, strings.ReplaceAll(v.Word, "-", " "))
		}
		s.check(d, "papers: "+strings.Join(names, ", "))
	}
	for _, i := range h.Children("instructed") {
		text := subjects(i) + " is instructed"
		if by, ok := i.Ref("by"); ok {
			text += " by " + by.Part.Label()
		}
		s.check(i, text)
	}
	if h == nil {
		s.Checks = append(s.Checks, Note{Text: "papers and instruction: nothing is stated (handover)"})
	}
}

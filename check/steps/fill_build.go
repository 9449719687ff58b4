package steps

import (
	"strings"

	"example.org/tundish/check/cautions"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

// Sources of what is looked at in a step.
var (
	sourceLevel   = cite.Source{Work: "setting of frames", Read: cite.Practice}
	sourceFitting = cite.Source{Work: "fitting practice of heating plants", Read: cite.Practice}
	sourceStore   = cite.Source{Work: "storage of units on site", Read: cite.Practice}
	sourceFirst   = cite.Source{Work: "Gas Safety (Installation and Use) Regulations 1998", Clause: "regulation 26", Read: cite.Published}
	sourceGasWork = cite.Source{Work: "order of gas work", Read: cite.Practice}
)

// The people who see a hold point.
const (
	byEngineer   = "the structural engineer"
	byGas        = "the registered gas engineer"
	byFitter     = "the fitter in charge"
	byElectric   = "the electrician in charge"
	byCommission = "the registered engineer who commissions"
)

// people names the persons of a role by code, behind what they are.
func (b *builder) people(what string, roles ...string) string {
	var who []string
	for _, role := range roles {
		for _, p := range b.p.ByKind("person") {
			if p.Get("role").Is(role) {
				n := p.Label()
				if r := p.Get("register"); r.Known() {
					n += " (" + r.Word + ")"
				}
				who = append(who, n)
			}
		}
	}
	if len(who) == 0 {
		return what
	}
	return what + ", " + strings.Join(who, " or ")
}

func (b *builder) hold(s *Step, text, witness string) {
	s.Holds = append(s.Holds, Hold{Text: text, Witness: witness})
}

func asbestos(b *builder) []*plant.Part {
	for i := range cautions.Triggers {
		if t := &cautions.Triggers[i]; t.Topic == "asbestos" {
			return []*plant.Part{t.Part(b.p)}
		}
	}
	return nil
}

func oldCircuits(b *builder) []*plant.Part {
	o := b.p.Block("separation").Child("old-circuits")
	if o == nil || o.First().Absent() {
		return nil
	}
	return []*plant.Part{o}
}

func roomOrPlant(b *builder) []*plant.Part {
	if r := b.p.Block("room"); r != nil {
		return []*plant.Part{r}
	}
	return allUnits(b)
}

func fillSurvey(b *builder, s *Step) {
	for _, a := range known(asbestos(b)) {
		s.check(a, "a refurbishment survey is on paper and covers room, old plant and route of the flue")
	}
	b.hold(s, "Nobody drills, cuts or strips before the report of the survey is read", "whoever answers for the building")
}

func fillOldCircuits(b *builder, s *Step) {
	for _, o := range known(oldCircuits(b)) {
		if st := o.Get("state"); st.Known() {
			s.check(o, "state of the water as stated: "+st.Word)
		}
		s.check(o, "isolated, tagged, cold and without pressure before it is opened; where the drained water goes is agreed")
	}
}

func fillSite(b *builder, s *Step) {
	room := b.p.Block("room")
	if fl := room.Child("floor"); fl != nil {
		if v := fl.Get("allows"); v.Known() {
			text := "the floor allows " + b.said(v)
			if q := b.res.Get(fl, "floor-load", solve.Always); q.Known() {
				text += "; the plant full of water asks for " + lang.In(q.Num, q.Unit)
			}
			s.check(fl, text)
		} else {
			s.open(fl, "what the floor allows (floor ... allows)")
		}
	}
	for _, fr := range room.Children("front") {
		if v := fr.Get("clearance"); v.Known() {
			s.check(fr, "free depth in front of "+subject(fr)+": "+b.said(v))
		}
	}
	for _, d := range room.Children("door") {
		if v := d.Get("wide"); v.Known() {
			s.check(d, d.Label()+" is "+b.said(v)+" wide: every part passes, units upright")
		}
	}
	b.hold(s, "Floor, walls and fixings are found fit for the loads", byEngineer)
}

func subject(p *plant.Part) string {
	if sub := p.Subject(); sub != nil {
		return sub.Label()
	}
	return "the units"
}

func fillDelivery(b *builder, s *Step) {
	s.practice("every package against the list of parts, before a seal is broken (tundish parts --delivered)", sourceStore)
	s.practice("units stay upright and dry in their packing; damage is noted on the delivery note", sourceStore)
	s.practice("serial number of every unit is noted", sourceStore)
}

func fillFrame(b *builder, s *Step) {
	for _, f := range b.p.ByKind("frame") {
		feet := f.Child("feet")
		if n := feet.First(); n.Known() {
			text := lang.Num(n.Num, 4) + " feet"
			if feet.Has("adjustable") {
				text += ", set to level"
			}
			if feet.Has("locked") {
				text += ", then locked"
			}
			s.check(feet, text)
		} else {
			s.open(f, "the feet of "+f.Label())
		}
		s.practice(f.Label()+" is level within 2 mm by meter both ways", sourceLevel)
		st := f.Child("standing")
		held := strings.ReplaceAll(st.First().Word, "-", " ")
		switch {
		case !st.First().Known():
			s.open(f, "how "+f.Label()+" stands (standing)")
			b.hold(s, "Level of "+f.Label()+" is seen; how it is held is settled before anything is hung", byFitter)
		case st.Get("from").Is("before-hanging"):
			s.check(st, held+", before anything is hung")
			b.hold(s, f.Label()+" is level, its feet are locked, and it is "+held, b.people(byFitter, "fitter"))
		default:
			s.check(st, held+"; nothing holds the frame while units are hung")
			b.hold(s, f.Label()+" is level, its feet are locked, and it is propped for the lifts", b.people(byFitter, "fitter"))
		}
	}
}

func fillSupports(b *builder, s *Step) {
	for _, f := range b.p.ByKind("frame") {
		if br := f.Child("bracket"); br.First().Known() {
			s.check(br, "brackets on the frame every "+b.said(br.First()))
		}
	}
	s.practice("a support near each device and at each change of direction", sourceFitting)
}

// joints looks at the gaskets and blanks of a step.
func (b *builder) joints(s *Step) {
	gaskets, blanks := 0.0, 0.0
	for i := range s.Parts {
		switch s.Parts[i].Name {
		case "gasket":
			gaskets += s.Parts[i].Quantity
		case "blank flange", "cap":
			blanks += s.Parts[i].Quantity
		}
	}
	if gaskets > 0 {
		s.Checks = append(s.Checks, Note{Text: "a gasket in each flanged joint, " + lang.Num(gaskets, 6) + " in all; bolts tightened crosswise"})
	}
	if blanks > 0 {
		s.Checks = append(s.Checks, Note{Text: "open ends closed by blanks and caps: " + lang.Num(blanks, 6)})
	}
}

func fillManifold(b *builder, s *Step) {
	for _, m := range b.p.ByKind("manifold") {
		s.check(m, m.Label()+": take-offs in the order of the units; every end closed, also for the night")
	}
	b.joints(s)
}

func fillHeader(b *builder, s *Step) {
	for _, h := range b.headers() {
		if b.headerStep(h) != s.ID {
			continue
		}
		text := h.Label() + ": take-offs in the order of the units"
		if l := h.Get("level"); l.Known() {
			text += "; it is the " + l.Word + " one"
		}
		s.check(h, text)
	}
	b.joints(s)
}

func fillUnits(b *builder, s *Step) {
	s.units = b.p.Units()
	for _, f := range b.p.ByKind("frame") {
		if o := f.Child("hang-order"); o != nil {
			var names []string
			for _, r := range o.Refs("units") {
				names = append(names, r.Part.Label())
			}
			s.check(o, "in the order "+strings.Join(names, ", "))
		} else {
			s.open(f, "the order in which units are hung (hang-order)")
		}
	}
	if b.p.One("frame") == nil {
		s.practice("each unit on its own bracket; no frame is stated, so the wall carries them", sourceFitting)
		b.hold(s, "Wall and brackets are found fit for the units full of water", byEngineer)
	}
	s.practice("nobody stands under a unit that hangs; serial number and place of each unit are noted", sourceFitting)
}

func fillUnitPipework(b *builder, s *Step) {
	s.units = b.p.Units()
	for _, u := range firsts(b.p.Units(), "relief") {
		r := u.Child("relief")
		text := "safety valve " + b.said(r.Get("set-pressure"))
		if pl := r.Get("place"); pl.Known() {
			text += ", " + strings.ReplaceAll(pl.Word, "-", " ") + " of the isolating valves"
		}
		s.check(r, text+"; nothing that can shut between it and the unit")
	}
	for _, u := range firsts(b.p.Units(), "pump") {
		s.check(u.Child("pump"), "each pump turns the way the water flows; valves on both sides open")
	}
	b.joints(s)
}

// firsts gives one part for each statement of a kind: the first of each group.
func firsts(list []*plant.Part, kind string) []*plant.Part {
	var out []*plant.Part
	var last *lang.Statement
	for _, p := range list {
		c := p.Child(kind)
		if c == nil || c.First().Absent() || c.Stmt == last {
			continue
		}
		last = c.Stmt
		out = append(out, p)
	}
	return out
}

func fillGasDrops(b *builder, s *Step) {
	s.units = b.p.Units()
	for _, u := range firsts(b.p.Units(), "gas-valve") {
		s.check(u.Child("gas-valve"), "valve of each unit shut; it stays shut until the purge")
	}
}

func fillGasSupply(b *builder, s *Step) {
	for _, r := range b.p.ByKind("regulator") {
		text := r.Label() + " holds " + b.said(r.Get("outlet"))
		if v := r.Get("vents-to"); v.Known() {
			text += ", its vent ends " + v.Word
		}
		s.check(r, text)
	}
	for _, v := range b.p.ByKind("valve") {
		if v.Get("kind").Is("emergency") {
			s.check(v, v.Label()+" shuts without power and can be reached")
		}
	}
	b.joints(s)
	b.hold(s, "The supply stays locked off", b.people(byGas, "gas-engineer"))
}

func fillSeparation(b *builder, s *Step) {
	for _, e := range b.p.ByKind("exchanger") {
		s.check(e, e.Label()+": ports by their marks, primary and secondary in counterflow")
	}
	for _, e := range b.p.ByKind("separator") {
		s.check(e, e.Label()+": upright, flow above return")
	}
	b.joints(s)
}

func fillMainPipes(b *builder, s *Step) {
	for _, st := range b.p.ByKind("strainer") {
		if st.Owner.Kind == "headers" || st.Owner.Kind == "secondary" {
			s.check(st, "strainer by its arrow, room to draw the sieve")
		}
	}
	b.joints(s)
}

func fillSafety(b *builder, s *Step) {
	for _, v := range b.p.ByKind("vessel") {
		if pc := v.Get("precharge"); pc.Known() {
			s.check(v, v.Label()+": precharge "+b.said(pc)+", measured before there is water")
		} else {
			s.open(v, "the precharge of "+v.Label())
		}
	}
	for _, r := range b.p.Block("safety").Children("relief") {
		s.check(r, r.Label()+": "+b.said(r.Get("set-pressure"))+", nothing that can shut before or behind it")
	}
	for _, d := range b.p.ByKind("discharge") {
		text := "discharge pipe of full bore to its tundish, in sight"
		if f := d.Get("falls"); f.Known() {
			text += ", falling " + b.said(f)
		}
		s.check(d, text)
	}
}

func fillDampers(b *builder, s *Step) {
	s.units = b.p.Units()
	for _, u := range firsts(b.p.Units(), "damper") {
		d := u.Child("damper")
		text := "each damper moves freely and closes by itself"
		if v := d.Get("closes-by"); v.Known() {
			text = "each damper moves freely and its " + v.Word + " closes it"
		}
		s.check(d, text)
	}
	b.hold(s, "Every damper is seen to close, unit by unit, before a connector hides it", b.people(byGas, "gas-engineer"))
}

func fillFlue(b *builder, s *Step) {
	for _, f := range b.p.ByKind("flue") {
		for _, r := range f.Parts {
			v := r.Get("falls")
			if !v.Known() || r.Row == nil || r.Index > 0 {
				continue
			}
			text := r.Label() + " falls " + b.said(v)
			var to []string
			for _, t := range r.Refs("towards") {
				to = append(to, t.Part.Label())
			}
			if r.Of > 1 {
				text = "each of " + r.Stmt.Head.Keyword + " " + r.Label() + " and on falls " + b.said(v) + " back to its unit"
			} else if len(to) > 0 {
				text += " towards " + strings.Join(to, ", ")
			}
			s.check(r, text+", measured at three places")
		}
		if l := f.Child("lubricant"); l.First().Known() {
			s.check(l, "every seal seated and wetted with "+l.First().Word+" lubricant, nothing else")
		}
		if e := f.Child("entry-order"); e != nil {
			var names []string
			for _, r := range e.Refs("units") {
				names = append(names, r.Part.Label())
			}
			s.check(e, "connectors enter in the order "+strings.Join(names, ", "))
		}
		if sp := f.Child("support"); sp.First().Known() {
			s.check(sp, "a support every "+b.said(sp.First()))
		}
	}
	b.hold(s, "Fall, seals, supports and clear bore of the whole flue are seen before it is closed in", b.people(byGas, "gas-engineer"))
}

func fillCondensate(b *builder, s *Step) {
	for _, p := range b.p.ByKind("condensate-pipe") {
		if v := p.Get("falls"); v.Known() {
			s.check(p, p.Label()+" falls "+b.said(v)+" to its drain")
		}
	}
	for _, t := range b.p.ByKind("flue-trap") {
		s.check(t, t.Label()+": seal "+b.said(t.Get("seal"))+", of its own, not shared with a unit")
	}
	for _, u := range firsts(b.p.Units(), "trap") {
		s.check(u.Child("trap"), "trap of each unit: seal "+b.said(u.Child("trap").Get("seal")))
	}
	for _, n := range b.p.ByKind("neutraliser") {
		if n.First().Known() {
			s.check(n, n.Label()+" is filled and level")
		}
	}
}

func fillAir(b *builder, s *Step) {
	for _, o := range b.p.ByKind("opening") {
		if v := o.Get("free"); v.Known() {
			s.check(o, o.Label()+": "+b.said(v)+" free, nothing before it")
		}
	}
	for _, d := range b.p.ByKind("detector") {
		s.check(d, d.Label()+" ("+strings.ReplaceAll(d.Get("gas").Word, "-", " ")+") hangs where it is stated")
	}
	for _, st := range b.p.ByKind("stop") {
		s.check(st, st.Label()+" can be reached on the way out")
	}
}

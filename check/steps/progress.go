package steps

import (
	"slices"
	"strings"

	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// How far a step is.
const (
	Done    = "done"
	Begun   = "begun"   // some of it is done
	Next    = "next"    // everything it waits for is done
	Waiting = "waiting" // something it waits for is not done
)

// Progress is how far a record says a step is.
type Progress struct {
	ID    string
	State string
	On    lang.Date // of the last mark; zero without a date
	By    string    // who marked it last
	Of    []string  // units of which a mark of a part speaks
	For   []string  // steps it waits for that are not done
	Marks []*plant.Part
	Shown []*plant.Part // tests and first firings that prove it
	dated bool
	last  *plant.Part // mark by which it is done
	full  bool        // done by marks or by what the record proves
}

// Fault is a mark that cannot be.
type Fault struct {
	Mark   *plant.Part
	Step   string // the step that is marked; in Unknown ones the word
	Before string // the step that it needs; empty where the plant has no such step
	State  string // how far Before is
	On, Of lang.Date
}

// Late tells a mark that is earlier than that of the step it needs.
func (f *Fault) Late() bool { return f.State == Done }

// Read reads the marks of a record against the steps of its plant, and what its
// tests, commissioning and signatures prove. rec may be nil: then nothing is
// marked.
func Read(l *List, rec *plant.Plant) (list []Progress, faults []Fault) {
	at := map[string]*Progress{}
	list = make([]Progress, len(l.Steps))
	for i := range l.Steps {
		list[i].ID = l.Steps[i].ID
		at[list[i].ID] = &list[i]
	}
	if rec != nil {
		for _, m := range rec.Block("assembly").Children("step") {
			w := m.Get("step")
			if !w.Known() {
				continue
			}
			p := at[w.Word]
			if p == nil {
				faults = append(faults, Fault{Mark: m, Step: w.Word})
				continue
			}
			p.Marks = append(p.Marks, m)
		}
		prove(l, rec, at)
	}
	for i := range list {
		list[i].read(&l.Steps[i])
	}
	for i := range l.Steps {
		p := &list[i]
		for _, id := range l.Steps[i].After {
			if at[id].State != Done {
				p.For = append(p.For, id)
			}
		}
		switch {
		case p.State != "":
		case len(p.For) > 0:
			p.State = Waiting
		default:
			p.State = Next
		}
	}
	for i := range l.Steps {
		faults = append(faults, early(&list[i], l.Steps[i].After, at)...)
	}
	return list, faults
}

// early lists the steps that a step marked as done or begun needs and that are
// not done, or done later. Tests and first firings are held only against dated
// marks: their own order is judged by the rules about them.
func early(p *Progress, after []string, at map[string]*Progress) (out []Fault) {
	for _, m := range p.Marks {
		if m.Get("state").Is("not-started") {
			continue
		}
		on, dated := markDate(m)
		for _, id := range after {
			need := at[id]
			switch {
			case need.State != Done && m.Get("state").Is("part-done") && need.State == Begun:
				// unit by unit side by side
			case need.State != Done:
				out = append(out, Fault{Mark: m, Step: p.ID, Before: id, State: need.State})
			case dated && need.dated && m == p.last:
				if of := need.doneFor(m); on.Before(of) {
					out = append(out, Fault{Mark: m, Step: p.ID, Before: id, State: Done, On: on, Of: of})
				}
			}
		}
	}
	for _, x := range p.Shown {
		on, dated := markDate(x)
		for _, id := range after {
			need := at[id]
			if need.State == Done && dated && need.dated && slices.Contains(need.Marks, need.last) && on.Before(need.On) {
				out = append(out, Fault{Mark: x, Step: p.ID, Before: id, State: Done, On: on, Of: need.On})
			}
		}
	}
	return out
}

// doneFor gives the first day on which a step may have been done for all that a
// mark of a later step speaks of: units go one by one, so a mark of some of them
// does not wait for the others.
func (p *Progress) doneFor(m *plant.Part) lang.Date {
	units := m.Refs("units")
	if len(units) == 0 && !m.Get("state").Is("part-done") {
		return p.On
	}
	concerns := func(x *plant.Part) bool {
		of := x.Refs("units")
		return len(of) == 0 || len(units) == 0 || slices.ContainsFunc(of, func(r plant.Ref) bool {
			return slices.ContainsFunc(units, func(u plant.Ref) bool { return u.Part == r.Part })
		})
	}
	first, found := p.On, false
	for _, x := range p.Marks {
		if x.Get("state").Is("not-started") || !concerns(x) {
			continue
		}
		on, ok := markDate(x)
		if !ok {
			return lang.Date{} // it may have been done on any day
		}
		if !found || on.Before(first) {
			first, found = on, true
		}
	}
	return first
}

func markDate(m *plant.Part) (lang.Date, bool) {
	v := m.Get("date")
	if !v.Known() {
		return lang.Date{}, false
	}
	return lang.ParseDate(v.Word)
}

// read puts the marks of a step together. A mark of some units is a part of it;
// the step is done when a mark says so for all, or the marks name every unit.
func (p *Progress) read(s *Step) {
	units := map[*plant.Part]bool{}
	for _, m := range p.Marks {
		named := m.Refs("units")
		state := m.Get("state")
		switch {
		case state.Is("done") && (len(named) == 0 || len(s.units) == 0):
			p.full = true
			p.mark(m)
		case state.Is("done"), state.Is("part-done"):
			p.State = Begun
			p.mark(m)
			for _, r := range named {
				if !units[r.Part] && (state.Is("done") || len(named) > 0) {
					units[r.Part] = true
					p.Of = append(p.Of, r.Part.Label())
				}
			}
		}
	}
	if len(s.units) > 0 && !slices.ContainsFunc(s.units, func(u *plant.Part) bool { return !units[u] }) {
		p.full = true
	}
	if p.full {
		p.State, p.Of = Done, nil
	}
}

func (p *Progress) mark(m *plant.Part) {
	on, dated := markDate(m)
	if dated && (!p.dated || !on.Before(p.On)) {
		p.On, p.dated, p.last = on, true, m
	} else if p.last == nil {
		p.last = m
	}
	if by, ok := m.Ref("by"); ok {
		p.By = by.Part.Label()
	}
}

// prove takes tests, commissioning and signatures of a record as marks of their
// steps.
func prove(l *List, rec *plant.Plant, at map[string]*Progress) {
	t := rec.Block("tested")
	proved := func(id string, list []*plant.Part) {
		p := at[id]
		if p == nil || len(list) == 0 {
			return
		}
		p.full = true
		for _, x := range list {
			p.mark(x)
		}
	}
	var water, gas []*plant.Part
	for _, s := range t.Children("strength") {
		if ofGas(s) {
			gas = append(gas, s)
		} else {
			water = append(water, s)
		}
	}
	for id, list := range map[string][]*plant.Part{
		"strength-test": water, "gas-strength-test": gas, "gas-tightness-test": t.Children("tightness"), "purge": t.Children("purge"), "flushing": t.Children("flushing"),
	} {
		if at[id] != nil {
			at[id].Shown = list
			proved(id, list)
		}
	}
	arrived := rec.Block("delivery").Children("package")
	if !slices.ContainsFunc(arrived, func(p *plant.Part) bool { return p.Get("state").Is("awaited") }) {
		proved("delivery", arrived)
	}
	fired := map[*plant.Part]bool{}
	commissioned := rec.ByKind("commissioned")
	for _, c := range commissioned {
		for _, r := range c.Subjects() {
			fired[r.Part] = true
		}
	}
	for _, id := range [...]string{"first-fire", "commissioning"} {
		s, p := l.Find(id), at[id]
		if p == nil || len(commissioned) == 0 {
			continue
		}
		for _, c := range commissioned {
			p.mark(c)
			if id == "first-fire" {
				p.Shown = earliest(p.Shown, c)
			}
		}
		p.State = Begun
		p.full = p.full || !slices.ContainsFunc(s.units, func(u *plant.Part) bool { return !fired[u] })
		if !p.full {
			for _, u := range s.units {
				if fired[u] {
					p.Of = append(p.Of, u.Label())
				}
			}
		}
	}
	if h := rec.Block("handed-over"); h != nil {
		proved("handover", h.Children("signed"))
	}
}

// earliest keeps the one of two dated parts that is earlier.
func earliest(have []*plant.Part, c *plant.Part) []*plant.Part {
	on, dated := markDate(c)
	if !dated {
		return have
	}
	if len(have) > 0 {
		if first, _ := markDate(have[0]); !on.Before(first) {
			return have
		}
	}
	return []*plant.Part{c}
}

// Text says in a few words how far a step is.
func (p *Progress) Text() string {
	switch p.State {
	case Done, Begun:
		out := p.State
		if len(p.Of) > 0 {
			out += " for " + strings.Join(p.Of, ", ")
		}
		if p.dated {
			out += ", " + p.On.String()
		}
		if p.By != "" {
			out += " by " + p.By
		}
		return out
	case Waiting:
		return "waiting for " + strings.Join(p.For, ", ")
	}
	return p.State
}

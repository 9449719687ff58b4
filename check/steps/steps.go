// Package steps gives the order in which a plant is built: from the resolved
// plant and its results to steps, each with what asks for it, what it waits for,
// its parts, tools, lifts, states of the frame, cautions, checks and hold points.
// It also reads how far a record says the work has come.
//
// The package judges nothing and knows no disk. An order is no permission to
// build, lift, open gas or fire.
package steps

import (
	"slices"

	"example.org/tundish/check/cite"
	"example.org/tundish/check/parts"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

// Ref is a statement that something follows from.
type Ref struct {
	Address string
	File    string
	Line    int // 1-based
}

// Note is something to look at, with the statement or the source it follows from.
type Note struct {
	Text   string
	From   Ref         // empty where no statement asks for it
	Source cite.Source // empty Work where it follows from the statement alone
}

// Hold is a point that nobody passes before somebody has seen and signed it.
type Hold struct {
	Text    string
	Witness string
	Before  []string // steps that wait for it
}

// Caution is what can hurt in a step.
type Caution struct {
	Topic string
	Text  string
	From  Ref // what carries it or, where Missing, what calls for it
	// Missing marks a caution that the plant calls for and the specification does
	// not carry; Text is then the usual one.
	Missing bool
}

// Part is a share of a line of the list of parts.
type Part struct {
	Package, Name, Size string
	Quantity            float64 // in Unit
	Unit                string  // as in the list of parts
	Why                 []parts.Why
}

// Gap is something that is not known.
type Gap struct {
	Needs string
	From  Ref
}

// Step is one step of the building.
type Step struct {
	ID       string // the word by which a record marks it
	Title    string
	Why      []Ref
	After    []string // IDs of the steps it waits for, without those that others imply
	Parts    []Part
	Tools    []string
	Lifts    []Lift
	States   []State
	Safe     []string // from which state on a frame stands safely
	Cautions []Caution
	Checks   []Note
	Holds    []Hold
	Open     []Gap
	units    []*plant.Part // that a mark may name, for steps done unit by unit
}

// List is the steps of a plant in an order that keeps every dependency.
type List struct {
	Steps []Step
	Gaps  []parts.Gap // parts that could not be counted
}

// Find gives the step with that ID; nil if the plant has none.
func (l *List) Find(id string) *Step {
	for i := range l.Steps {
		if l.Steps[i].ID == id {
			return &l.Steps[i]
		}
	}
	return nil
}

// builder makes the list of one plant.
type builder struct {
	p      *plant.Plant
	res    *solve.Results
	sys    lang.System
	shares map[string][]Part // by step
}

// Of gives the steps of a plant; res are its results. The result is never nil.
// Of two steps that do not depend on each other the one that is usual first
// comes first.
func Of(p *plant.Plant, res *solve.Results) *List {
	b := &builder{p: p, res: res, shares: map[string][]Part{}}
	if p.US() {
		b.sys = lang.US
	}
	list := parts.Of(p)
	for i := range list.Lines {
		b.place(&list.Lines[i])
	}
	there := map[string]*kind{}
	for i := range kinds {
		k := &kinds[i]
		if len(b.shares[k.id]) > 0 || len(known(k.asks(b))) > 0 {
			there[k.id] = k
		}
	}
	after := map[string][]string{}
	for id, k := range there {
		after[id] = b.waits(k, there, map[string]bool{})
	}
	out := &List{Gaps: list.Gaps}
	for _, id := range order(there, after) {
		out.Steps = append(out.Steps, b.step(there[id], direct(id, after)))
	}
	for i := range out.Steps {
		s := &out.Steps[i]
		for k := range s.Holds {
			for j := range out.Steps {
				if slices.Contains(out.Steps[j].After, s.ID) {
					s.Holds[k].Before = append(s.Holds[k].Before, out.Steps[j].ID)
				}
			}
		}
	}
	return out
}

// known drops what is not in the plant.
func known(list []*plant.Part) []*plant.Part {
	var out []*plant.Part
	for _, p := range list {
		if p != nil && p.Stmt != nil {
			out = append(out, p)
		}
	}
	return out
}

// waits lists the steps of this plant that a step waits for: where one is not
// there, those that it would have waited for.
func (b *builder) waits(k *kind, there map[string]*kind, seen map[string]bool) []string {
	var out []string
	for _, id := range k.after(b) {
		if seen[id] {
			continue
		}
		seen[id] = true
		if there[id] != nil {
			out = append(out, id)
			continue
		}
		if other := find(id); other != nil {
			out = append(out, b.waits(other, there, seen)...)
		}
	}
	return out
}

// order sorts topologically and keeps the order of the table where it may. What
// is in a circle comes last; the table has none.
func order(there map[string]*kind, after map[string][]string) []string {
	var out []string
	done := map[string]bool{}
	for len(out) < len(there) {
		next := ""
		for i := range kinds {
			id := kinds[i].id
			if there[id] == nil || done[id] {
				continue
			}
			free := !slices.ContainsFunc(after[id], func(d string) bool { return !done[d] })
			if free || next == "" {
				next = id
			}
			if free {
				break
			}
		}
		done[next] = true
		out = append(out, next)
	}
	return out
}

// direct drops from what a step waits for what its other waits imply.
func direct(id string, after map[string][]string) []string {
	var out []string
	for _, d := range after[id] {
		implied := slices.ContainsFunc(after[id], func(o string) bool { return o != d && reaches(o, d, after, map[string]bool{}) })
		if !implied {
			out = append(out, d)
		}
	}
	return out
}

func reaches(from, to string, after map[string][]string, seen map[string]bool) bool {
	for _, d := range after[from] {
		if d == to {
			return true
		}
		if !seen[d] {
			seen[d] = true
			if reaches(d, to, after, seen) {
				return true
			}
		}
	}
	return false
}

func (b *builder) step(k *kind, after []string) Step {
	s := Step{ID: k.id, Title: k.title, After: after, Parts: b.shares[k.id], Tools: slices.Clone(k.tools)}
	seen := map[Ref]int{}
	add := func(r Ref, from *plant.Part) {
		at := Ref{File: r.File, Line: r.Line}
		if i, ok := seen[at]; ok {
			if from != nil && s.Why[i].Address != from.Address() {
				s.Why[i].Address = parts.Span(from, s.Why[i].Address)
			}
			return
		}
		seen[at] = len(s.Why)
		s.Why = append(s.Why, r)
	}
	for _, p := range known(k.asks(b)) {
		add(ref(p), p)
	}
	for i := range s.Parts {
		for _, y := range s.Parts[i].Why {
			add(Ref{y.Address, y.File, y.Line}, nil)
		}
	}
	b.toolsFor(&s)
	b.liftsOf(&s)
	b.frameStates(&s)
	if k.fill != nil {
		k.fill(b, &s)
	}
	b.cautionsFor(&s)
	return s
}

func ref(p *plant.Part) Ref {
	if p == nil || p.Stmt == nil || p.File == nil {
		return Ref{}
	}
	line, _ := p.File.Source.Position(p.Span().Start)
	return Ref{p.Address(), p.File.Source.Name, line}
}

// check adds something to look at that a statement asks for.
func (s *Step) check(from *plant.Part, text string) {
	s.Checks = append(s.Checks, Note{Text: text, From: ref(from)})
}

// practice adds something to look at that a source asks for.
func (s *Step) practice(text string, src cite.Source) {
	s.Checks = append(s.Checks, Note{Text: text, Source: src})
}

func (s *Step) open(from *plant.Part, needs string) {
	s.Open = append(s.Open, Gap{needs, ref(from)})
}

// quantity prints a value as the plant speaks.
func (b *builder) quantity(v float64, d lang.Dimension) string { return lang.Quantity(v, d, b.sys) }

// said prints a stated value in the unit in which it is written.
func (b *builder) said(v plant.Value) string {
	if !v.Known() || v.Slot == nil {
		return ""
	}
	if v.Field != nil && len(v.Field.Values) > 0 {
		if e := v.Field.Values[0].Expr; e != nil && e.UnitText != "" {
			return lang.In(v.Num, e.UnitText)
		}
	}
	return b.quantity(v.Num, v.Slot.Dim)
}

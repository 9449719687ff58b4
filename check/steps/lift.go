package steps

import (
	"fmt"
	"math"
	"strings"

	"example.org/tundish/check/calc/pipe"
	"example.org/tundish/check/calc/stability"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/tables"
	"example.org/tundish/lang"
)

// Lift is one kind of piece that is lifted in a step.
type Lift struct {
	What   string
	Count  float64
	Mass   float64 // kg of one piece; 0 where it is not stated
	People int     // who may lift it by hand, 1 to 3; 0: by a machine only, or the mass is not known
	ByHand float64 // kg that so many, or for a machine three, may lift by hand
	Stated string  // what the specification says about lifting
	From   Ref
	Source cite.Source
}

// Known tells a lift with a stated mass.
func (l *Lift) Known() bool { return l.Mass > 0 }

// handGuide is the source of the people of a lift.
var handGuide = cite.Source{
	Work: stability.SourceLift.Work + "; " + stability.SourceTeam.Work, Read: cite.Memory,
	Note: stability.SourceLift.Note,
}

// lift adds a piece; high tells one that is lifted to the shoulders.
func (s *Step) lift(what string, count, mass float64, high bool, stated string, from *plant.Part) {
	l := Lift{What: what, Count: count, Mass: mass, Stated: stated, From: ref(from), Source: handGuide}
	zone := stability.Elbow
	if high {
		zone = stability.Shoulder
	}
	if one, err := stability.LiftGuide(zone, false, false); err == nil && mass > 0 {
		for n := 1; n <= 3; n++ {
			if l.ByHand, err = stability.TeamLift(one, n); err == nil && mass <= l.ByHand*(1+1e-9) {
				l.People = n
				break
			}
		}
	}
	s.Lifts = append(s.Lifts, l)
}

// liftsOf names the heavy pieces of a step by what the plant states of them.
func (b *builder) liftsOf(s *Step) {
	switch s.ID {
	case "frame":
		b.groups(s, b.p.ByKind("section"), func(p *plant.Part) (string, float64) {
			return "frame section", p.Get("mass").Num
		}, false)
	case "gas-manifold":
		b.pieces(s, b.p.ByKind("manifold"))
	case "return-header", "flow-header":
		for _, h := range b.headers() {
			if b.headerStep(h) == s.ID {
				b.pieces(s, []*plant.Part{h})
			}
		}
	case "units":
		b.groups(s, b.p.Units(), func(p *plant.Part) (string, float64) {
			return strings.TrimSpace("unit " + p.Child("type").First().Word), p.Child("mass").Get("mass").Num
		}, true)
	case "separation":
		for _, kind := range [...]string{"exchanger", "separator"} {
			b.groups(s, b.p.ByKind(kind), func(p *plant.Part) (string, float64) {
				return kind, p.Child("mass").Get("mass").Num
			}, false)
		}
	case "safety-devices":
		b.groups(s, b.p.ByKind("vessel"), func(p *plant.Part) (string, float64) {
			return "expansion vessel " + b.said(p.Get("volume")), 0
		}, false)
	}
}

// groups adds parts that are alike as one lift.
func (b *builder) groups(s *Step, list []*plant.Part, of func(*plant.Part) (string, float64), high bool) {
	for i := 0; i < len(list); {
		what, mass := of(list[i])
		j := i + 1
		for ; j < len(list); j++ {
			if w, m := of(list[j]); w != what || m != mass {
				break
			}
		}
		if mass == 0 {
			s.open(list[i], "the mass of "+list[i].Label()+", before it is lifted")
		}
		stated := ""
		if s.ID == "units" { // what the frame states is about them
			stated = b.lifting(mass)
		}
		s.lift(what, float64(j-i), mass, high, stated, list[i])
		i = j
	}
}

// pieces adds the pieces of a header or manifold, each as long as a frame section
// at most, with the mass of the bare pipe.
func (b *builder) pieces(s *Step, list []*plant.Part) {
	section := 0.0
	for _, sec := range b.p.ByKind("section") {
		if sec.Owner != nil && sec.Owner.Kind == "frame" && !sec.Get("shape").Is("corner") {
			section = sec.Get("length").Num
			break
		}
	}
	for _, h := range list {
		size, length := h.Get("size"), h.Get("length")
		if !size.Known() || !length.Known() {
			s.open(h, "the size and length of "+h.Label()+", to know what its pieces weigh")
			continue
		}
		piece, n := length.Num, 1.0
		if section > 0 && size.Num > tables.LimitOf("flanged-above").Num {
			n = math.Ceil(length.Num/section - 1e-9)
			piece = math.Min(section, length.Num)
		}
		t := pipe.Find(h.Get("material").Word, size.Num)
		if t == nil || t.Mass() == 0 {
			s.open(h, "the mass of a piece of "+h.Label()+", before it is lifted")
			s.lift("piece of "+h.Label(), n, 0, true, "", h)
			continue
		}
		s.lift(fmt.Sprintf("piece of %s, %s of bare pipe", h.Label(), b.quantity(piece, lang.Length)), n, t.Mass()*piece, true, "", h)
	}
}

// lifting is what the frame states about lifting its units of this mass.
func (b *builder) lifting(mass float64) string {
	l := b.p.One("frame").Child("lifting")
	if !l.First().Known() {
		return ""
	}
	out := strings.ReplaceAll(l.Get("means").Word, "-", " ")
	if v := l.Get("capacity"); v.Known() {
		out += " for " + b.said(v)
		if v.Num < mass*(1-1e-9) {
			out += ", which is less than this piece"
		}
	}
	if v := l.Get("people"); v.Known() {
		out += ", " + lang.Num(v.Num, 3) + " people"
	}
	if l.Has("planned") {
		out += ", by a lift plan"
	} else {
		out += ", no lift plan stated"
	}
	return out
}

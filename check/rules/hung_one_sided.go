package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/stability"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleHungOneSided)

var ruleHungOneSided = check.Rule{
	ID: "hung-one-sided", Group: check.Frame, Severity: lang.Warning, Since: "0.2",
	Summary: "Units are hung on one side of a frame that nothing holds.",
	Why:     "Each unit pulls the frame over to its own side until one hangs against it.",
	Mend:    "hang the sides in turn: U1, U5, U2, U6",
	Sources: sources(stability.SourceTipLimits),
	Run: func(p *check.Pass) {
		for _, f := range p.Plant.ByKind("frame") {
			q := p.Results.Group(f, "uneven-units", solve.Most, solve.Always)
			if q == nil || solve.HeldBefore(f) {
				continue
			}
			limit := p.Limit("uneven-units-most")
			if q.Known() && q.Num > limit.Num && !standingKnown(f) {
				p.Unknown(f, "how "+f.Label()+" stands, and when it is held (standing ... held)")
				continue
			}
			if g := p.AtMost(q, limit); g != nil {
				g.Message = "At some time one side of " + f.Label() + " carries " + lang.Num(q.Num, 3) + " units more than the other, and nothing holds the frame then."
				p.Report(f, *g)
			}
		}
	},
}

// standingKnown tells a frame of which the text says when it is held.
func standingKnown(f *plant.Part) bool {
	s := f.Child("standing")
	return s.First().Is("free") || s.First().Known() && s.Get("from").Known()
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleWrongTerminal)

var ruleWrongTerminal = check.Rule{
	ID: "wrong-terminal", Group: check.Electrical, Severity: lang.Error, Since: "0.2",
	Summary: "A damper or pump is wired to a terminal that the unit keeps for something else.",
	Why:     "The pump runs when the damper should open; the unit fires against a shut flue or without flow.",
	Mend:    "take the terminal of the unit's data",
	Sources: sources(cite.Source{Work: "data of the unit", Read: cite.Published}),
	Run: func(p *check.Pass) {
		for _, w := range p.Plant.ByKind("wire") {
			at := w.Get("terminal")
			if !at.Known() || shared(p.Plant, w) {
				continue // terminal-taken-twice speaks of the second
			}
			for _, s := range w.Subjects() {
				unit := s.Part.Owner
				want := unit.Child("terminals").Get(s.Part.Kind)
				if want.Known() && want.Word != at.Word {
					p.Report(w, check.Finding{Part: s.Part.Address(), Span: at.Span(), Found: at.Word, Limit: want.Word, Message: "The " + s.Part.Kind + " of " + unit.Label() + " is wired to terminal " + at.Word + "; the unit's terminal for it is " + want.Word + "."})
				}
			}
		}
	},
}

// shared tells a wire whose terminal another wire takes too, on one of the same
// parts.
func shared(pl *plant.Plant, w *plant.Part) bool {
	for _, o := range pl.ByKind("wire") {
		if o == w || o.Get("terminal").Word != w.Get("terminal").Word {
			continue
		}
		for _, a := range o.Refs("to") {
			for _, b := range w.Refs("to") {
				if a.Part == b.Part {
					return true
				}
			}
		}
	}
	return false
}

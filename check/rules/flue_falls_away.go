package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/flue"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleFlueFallsAway)

var ruleFlueFallsAway = check.Rule{
	ID: "flue-falls-away", Group: check.Flue, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "A horizontal piece of a flue is level, or falls away from its trap or unit.",
	Why:     "The condensate collects where nothing drains it, until it closes the flue and products come back.",
	Mend:    "let connectors fall to their unit and the header to its trap",
	Sources: sources(flue.SourceFall),
	Run: func(p *check.Pass) {
		for _, kind := range [...]string{"connector", "flue-header", "run"} {
			for _, part := range p.Plant.ByKind(kind) {
				judgeFallTarget(p, part)
			}
		}
	},
}

func judgeFallTarget(p *check.Pass, part *plant.Part) {
	falls := part.Get("falls")
	if !falls.Known() {
		return // flue-fall-not-stated speaks of it
	}
	if falls.Num <= 0 {
		p.Report(part, check.Finding{
			Span: falls.Span(), Found: p.In(falls.Num, "mm/m"), Limit: "a fall above zero",
			Message: part.Label() + " has no fall towards its drain: " + p.In(falls.Num, "mm/m") + ".",
		})
		return
	}
	to := part.Refs("towards")
	if len(to) == 0 {
		p.Unknown(part, "what "+part.Label()+" falls towards")
		return
	}
	for _, ref := range to {
		switch ref.Part.Kind {
		case "unit", "flue-trap", "trap":
			continue
		case "connector", "flue-header", "run":
			// A piece may fall into the next one, which has its own drain to answer
			// for, unless that one falls back into this.
			if ref.Part != part && !fallsInto(ref.Part, part) {
				continue
			}
		}
		p.Report(part, check.Finding{
			Span: part.Stmt.Abs(part.Bound.Field("towards").Span), Found: "towards " + ref.Part.Label(), Limit: "towards a unit or a trap",
			Message: part.Label() + " falls towards " + ref.Part.Label() + ", which is no drain; the condensate collects there.",
		})
		return
	}
}

func fallsInto(from, to *plant.Part) bool {
	for _, ref := range from.Refs("towards") {
		if ref.Part == to {
			return true
		}
	}
	return false
}

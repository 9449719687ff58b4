package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleBendNotInspectable)

var ruleBendNotInspectable = check.Rule{
	ID: "bend-not-inspectable", Group: check.Flue, Severity: lang.Warning, Since: "0.1",
	Summary: "A hidden bend of a flue has no inspection opening.",
	Why:     "A joint that opened behind a wall is not seen until somebody is hurt.",
	Mend:    "give the bend an inspection opening with a hatch",
	Sources: sources(cite.Source{Work: "Approved Document J (England)", Clause: "flues in voids", Read: cite.Memory}),
	Run: func(p *check.Pass) {
		for _, b := range p.Plant.ByKind("bend") {
			piece, ok := b.Ref("on")
			where := ""
			if ok {
				where = " on " + piece.Part.Label()
			}
			hidden := b.Has("concealed") || ok && piece.Part.Has("concealed")
			if hidden && !b.Has("inspection") {
				end := b.Stmt.HeadSpan().End
				p.Report(b, check.Finding{
					Message: "The hidden bend" + where + " has no inspection opening.",
					Fixes:   []lang.Fix{{Title: "Give the bend an inspection opening", Best: true, Edits: []lang.Edit{{Span: lang.Span{Start: end, End: end}, NewText: " inspection"}}}},
				})
			}
		}
	},
}

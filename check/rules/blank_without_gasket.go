package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleBlankWithoutGasket)

var ruleBlankWithoutGasket = check.Rule{
	ID: "blank-without-gasket", Group: check.Water, Severity: lang.Warning, Since: "0.1",
	Summary: "A blank flange has no gasket.",
	Why:     "The joint weeps, and the gasket is short on the list of parts.",
	Mend:    "add the gasket",
	Sources: sources(cite.Source{Work: "a gasket at each flange", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		for _, b := range p.Plant.ByKind("blank") {
			if b.Owner.Kind == "flue" || b.Has("gasket") || b.Has("seal") {
				continue
			}
			if b.Undecided() {
				p.Unknown(b, "what the blank closes, and its gasket")
				continue
			}
			end := b.Stmt.HeadSpan().End
			p.Absent(b, "the gasket", check.Finding{Message: "The blank of " + labelOf(b) + " has no gasket.", Fixes: []lang.Fix{{Title: "Add a gasket", Best: true, Edits: []lang.Edit{{Span: lang.Span{Start: end, End: end}, NewText: " gasket"}}}}})
		}
	},
}

// labelOf names the run that a small part belongs to.
func labelOf(part *plant.Part) string {
	if ref, ok := part.Ref("of"); ok {
		return ref.Part.Label()
	}
	return part.Label()
}

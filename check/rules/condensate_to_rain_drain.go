package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleCondensateToRainDrain)

var ruleCondensateToRainDrain = check.Rule{
	ID: "condensate-to-rain-drain", Group: check.Condensate, Severity: lang.Error, Since: "0.1",
	Summary: "Condensate goes to a rain water drain.",
	Why:     "Rain water reaches streams untreated.",
	Mend:    "lead the condensate to a foul drain",
	Sources: sources(cite.Source{Work: "rain water drains take no condensate", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		for _, g := range p.Plant.ByKind("gully") {
			if v := g.Get("kind"); v.Is("rain-drain") {
				p.Report(g, check.Finding{Span: v.Span(), Message: g.Label() + " is a rain water drain and takes no condensate.", Fixes: []lang.Fix{{Title: "Use a foul drain", Edits: []lang.Edit{{Span: v.Span(), NewText: "foul-drain"}}}}})
			}
		}
	},
}

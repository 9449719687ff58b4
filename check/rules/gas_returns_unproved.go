package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleGasReturnsUnproved)

var ruleGasReturnsUnproved = check.Rule{
	ID: "gas-returns-unproved", Group: check.Gas, Severity: lang.Warning, Since: "0.1",
	Summary: "After a shut-off gas may come back without a proof of tightness.",
	Why:     "An open valve or a broken pipe lets gas into the room.",
	Mend:    "use manual reset or gas proving",
	Sources: sources(cite.Source{Work: "IGEM/UP/11", Read: cite.Practice, Note: "citing IGEM/UP/1A, as quoted"}),
	Run: func(p *check.Pass) {
		for _, v := range p.Plant.ByKind("valve") {
			kind := v.Get("kind")
			if v.Has("manual-reset") || v.Has("proving") {
				continue
			}
			if kind.Open() {
				p.Unknown(v, "whether "+v.Label()+" is an emergency valve, and how it opens again")
			}
			if kind.Is("emergency") {
				end := v.Stmt.HeadSpan().End
				p.Absent(v, "how it opens again", check.Finding{Message: v.Label() + " may open again without a proof of tightness.", Fixes: []lang.Fix{{Title: "Use manual reset", Best: true, Edits: []lang.Edit{{Span: lang.Span{Start: end, End: end}, NewText: " manual-reset"}}}}})
			}
		}
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleTrapShared)

var ruleTrapShared = check.Rule{
	ID: "trap-shared", Group: check.Condensate, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "Several units or flues drain through one trap.",
	Why:     "The units exchange products through the shared trap.",
	Mend:    "give each unit and each flue its own trap",
	Sources: sources(cite.Source{Work: "one trap joins the gas paths of what drains into it", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		for _, t := range p.Plant.ByKind("flue-trap") {
			if from := t.Refs("from"); len(from) > 1 {
				p.Report(t, check.Finding{Span: t.Stmt.Abs(t.Bound.Field("from").Span), Found: lang.Num(float64(len(from)), 3) + " parts", Limit: "one part for each trap", Message: t.Label() + " drains " + lang.Num(float64(len(from)), 3) + " parts, which exchange products through it."})
			}
		}
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleSecondProtectionMissing)

var ruleSecondProtectionMissing = check.Rule{
	ID: "second-protection-missing", Group: check.Gas, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "A regulator fed with 75 mbar or more has one device against over-pressure only.",
	Why:     "When it fails, the full inlet pressure reaches every unit.",
	Mend:    "add a slam-shut or a relief valve",
	Sources: sources(cite.Source{Work: "Gas Safety (Installation and Use) Regulations 1998", Clause: "regulation 14", Read: cite.Published}),
	Run: func(p *check.Pass) {
		limit := p.Limit("regulator-second-device")
		for _, r := range p.Plant.ByKind("regulator") {
			if r.Has("slam-shut") || r.Has("relief-valve") {
				continue
			}
			in := r.Get("inlet")
			if !in.Known() {
				p.Unknown(r, "the inlet pressure of "+r.Label())
				continue
			}
			if in.Num < limit.Num*(1-1e-9) {
				continue
			}
			end := r.Stmt.HeadSpan().End
			p.Absent(r, "the second device", check.Finding{
				Found: p.In(in.Num, "mbar"), Limit: "two devices from " + limit.Text(), Source: limit.Source, Message: r.Label() + " is fed with " + p.In(in.Num, "mbar") + " and has no second device against over-pressure.",
				Fixes: []lang.Fix{{Title: "Add a slam-shut", Best: true, Edits: []lang.Edit{{Span: lang.Span{Start: end, End: end}, NewText: " slam-shut"}}}},
			})
		}
	},
}

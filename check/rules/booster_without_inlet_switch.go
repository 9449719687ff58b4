package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleBoosterWithoutInletSwitch)

var ruleBoosterWithoutInletSwitch = check.Rule{
	ID: "booster-without-inlet-switch", Group: check.Gas, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "A gas booster has no switch that stops it at low inlet pressure.",
	Why:     "It pulls the supply down and puts out the neighbors.",
	Mend:    "add a low-pressure cut-off at its inlet",
	Sources: sources(cite.Source{Work: "IGEM/UP/2", Read: cite.Memory}),
	Run: func(p *check.Pass) {
		for _, b := range p.Plant.ByKind("booster") {
			if b.First().Absent() || b.Has("inlet-switch") {
				continue
			}
			if b.Undecided() {
				p.Unknown(b, "whether there is a booster")
				continue
			}
			end := b.Stmt.HeadSpan().End
			p.Absent(b, "the inlet switch", check.Finding{Message: "The booster has no switch that stops it when its inlet pressure is low.", Fixes: []lang.Fix{{Title: "Add an inlet switch", Best: true, Edits: []lang.Edit{{Span: lang.Span{Start: end, End: end}, NewText: " inlet-switch"}}}}})
		}
	},
}

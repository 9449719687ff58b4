package rules

import (
	"strings"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleAsBuiltBreaksRule)

var ruleAsBuiltBreaksRule = check.Rule{
	ID: "as-built-breaks-rule", Group: check.Record, Severity: lang.Error, Since: "0.2",
	Summary: "What was built otherwise than drawn breaks a rule that the design keeps.",
	Why:     "A longer pipe or a flatter flue was never judged; the fault shows when all units fire.",
	Mend:    "build it as drawn, or revise the design so that the rule holds",
	Limits:  "Follows changes of length, size, fall and bends of single parts. A finding has the severity of the rule that is broken.",
	Sources: sources(sourceDesign),
	Run: func(p *check.Pass) {
		for _, c := range p.Plant.NotBuilt {
			p.Unknown(c, "a statement of its own for "+c.Subject().Label()+" in the plant, with the value that changed")
		}
		if p.Plant.Built == nil {
			return
		}
		type fault struct{ rule, part string }
		drawn := map[fault]bool{}
		for _, f := range p.Judge(p.Plant.Of).Findings {
			drawn[fault{f.Rule, f.Part}] = true
		}
		for _, f := range p.Judge(p.Plant.Built).Findings {
			if drawn[fault{f.Rule, f.Part}] || f.Severity == lang.Note || strings.HasPrefix(f.Rule, "deviation-") {
				continue
			}
			at := changedPart(p.Plant, f.Part)
			p.Report(at, check.Finding{Part: f.Part, Severity: f.Severity, Found: f.Found, Limit: f.Limit, Source: f.Source, Message: "As built, " + f.Rule + ": " + f.Message})
		}
	},
}

// changedPart is the change that speaks of the part of a finding, else the first.
func changedPart(p *plant.Plant, name string) *plant.Part {
	list := p.Block("as-built").Children("changed")
	for _, c := range list {
		if c.Subject().Label() == name {
			return c
		}
	}
	return list[0]
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleGasFittingsNotCounted)

var ruleGasFittingsNotCounted = check.Rule{
	ID: "gas-fittings-not-counted", Group: check.Gas, Severity: lang.Warning, Since: "0.1",
	Summary: "A gas pipe states no fittings, and no allowance is made for them.",
	Why:     "Fittings cost as much as a third of the pipe.",
	Mend:    "list bends and tees, or state a fitting-allowance",
	Sources: sources(cite.Source{Work: "Chadderton, Building Services Engineering", Edition: "5th ed.", Read: cite.Published, Note: "a quarter of the length for fittings"}),
	Run: func(p *check.Pass) {
		block := p.Plant.Block("gas-run")
		switch allowance := block.Child("fitting-allowance").First(); {
		case allowance.Known():
			return
		case allowance.Open():
			p.Unknown(block, "the allowance for fittings")
			return
		}
		for _, kind := range [...]string{"pipe", "drop"} {
			for _, part := range block.Children(kind) {
				if part.Undecided() {
					p.Unknown(part, "the fittings of "+part.Label())
					continue
				}
				listed := false
				for _, s := range [...]string{"bends", "half-bends", "tees", "branch-tees", "valves", "reducers", "loss", "loss-coefficient"} {
					listed = listed || part.Get(s).Given
				}
				if !listed && part.Index == 0 {
					p.Absent(part, "the fittings of "+part.Label(), check.Finding{Message: part.Label() + " lists no fittings, and the run has no allowance for them."})
				}
			}
		}
	},
}

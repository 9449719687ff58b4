package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleDeadEndNotPurged)

var ruleDeadEndNotPurged = check.Rule{
	ID: "dead-end-not-purged", Group: check.Gas, Severity: lang.Warning, Since: "0.1",
	Summary: "A dead end of the gas run has no purge point.",
	Why:     "Air stays trapped and reaches a burner later.",
	Mend:    "add a purge point at the dead end",
	Sources: sources(cite.Source{Work: "IGEM/UP/1, purge points at dead ends", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		block := p.Plant.Block("gas-run")
		for _, m := range block.Children("manifold") {
			if !blanked(block.Children("purge-point"), m) {
				missing(p, m, "the purge point of "+m.Label(), check.Finding{Message: "The dead end of " + m.Label() + " has no purge point."}, "purge-point")
			}
		}
	},
}

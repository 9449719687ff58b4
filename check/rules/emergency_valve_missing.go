package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleEmergencyValveMissing)

var ruleEmergencyValveMissing = check.Rule{
	ID: "emergency-valve-missing", Group: check.Gas, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "The gas run has no valve that shuts by itself when power fails.",
	Why:     "In a fire or a leak nothing stops the gas.",
	Mend:    "add an emergency valve, fail-closed, before the plant",
	Sources: sources(cite.Source{Work: "IGEM/UP/2 and IGEM/UP/11", Read: cite.Memory}),
	Run: func(p *check.Pass) {
		block := p.Plant.Block("gas-run")
		if block == nil {
			if len(p.Plant.Units()) > 0 {
				p.Unknown(nil, "a gas-run block")
			}
			return
		}
		var found *plant.Part
		open, other := false, false
		for _, v := range block.Children("valve") {
			open, other = open || !v.Get("kind").Known(), other || v.Undecided() || v.Get("kind").Open()
			if v.Get("kind").Is("emergency") {
				found = v
				if v.Has("fail-closed") {
					return
				}
			}
		}
		if found != nil && !other {
			end := found.Stmt.HeadSpan().End
			p.Absent(found, "fail-closed", check.Finding{Message: found.Label() + " does not shut when power fails.", Fixes: []lang.Fix{{Title: "Make it fail-closed", Edits: []lang.Edit{{Span: lang.Span{Start: end, End: end}, NewText: " fail-closed"}}}}})
			return
		}
		if open || found != nil {
			p.Unknown(block, "what each valve of the gas run is for")
			return
		}
		p.Absent(block, "an emergency valve", check.Finding{Message: "The gas run has no emergency valve that shuts when power fails."})
	},
}

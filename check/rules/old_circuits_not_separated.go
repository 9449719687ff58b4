package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleOldCircuitsNotSeparated)

var ruleOldCircuitsNotSeparated = check.Rule{
	ID: "old-circuits-not-separated", Group: check.Water, Severity: lang.Error, Since: "0.1",
	Summary: "Old or open circuits join the new units directly.",
	Why:     "Old sludge and oxygen destroy the heat exchangers of the units within a winter or two.",
	Mend:    "put a plate exchanger between, or clean the old circuits and record it",
	Sources: sources(cite.Source{Work: "separation of old circuits, idea of a technical journal", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		sep := p.Plant.Block("separation")
		old := sep.Child("old-circuits")
		if old == nil || old.First().Absent() || len(sep.Children("exchanger")) > 0 {
			return
		}
		if old.Get("state").Is("cleaned") && !old.Has("open-vented") && !old.Has("permeable-pipe") {
			return
		}
		if !old.Get("state").Known() && !old.Has("open-vented") && !old.Has("permeable-pipe") && !old.Has("open-vented-once") {
			p.Unknown(old, "what is known of the water of the old circuits")
			return
		}
		if old.Get("state").Open() && !old.Has("open-vented") && !old.Has("permeable-pipe") {
			p.Unknown(old, "whether the old circuits were cleaned")
			return
		}
		why := "were not cleaned"
		switch {
		case old.Has("open-vented"):
			why = "are open to the air"
		case old.Has("permeable-pipe"):
			why = "have pipe that lets oxygen in"
		}
		p.Absent(old, "an exchanger", check.Finding{Part: "separation", Message: "The old circuits join the new units without a plate exchanger and " + why + "."})
	},
}

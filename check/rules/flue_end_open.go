package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleFlueEndOpen)

var ruleFlueEndOpen = check.Rule{
	ID: "flue-end-open", Group: check.Flue, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "The end of a common flue has no blank.",
	Why:     "Products leave through the open end, into the plant room.",
	Mend:    "close the dead end with a blank and its seal",
	Sources: sources(cite.Source{Work: "an open end of a flue under pressure lets products into the room", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		for _, fl := range p.Plant.ByKind("flue") {
			for _, h := range fl.Children("flue-header") {
				if !blanked(fl.Children("blank"), h) {
					missing(p, h, "the blank of "+h.Label(), check.Finding{Message: "The dead end of " + h.Label() + " has no blank."}, "blank")
				}
			}
		}
	},
}

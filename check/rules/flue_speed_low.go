package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleFlueSpeedLow)

var ruleFlueSpeedLow = check.Rule{
	ID: "flue-speed-low", Group: check.Flue, Severity: lang.Warning, Since: "0.3",
	Summary: "With all units at full fire products hardly move in a flue.",
	Why:     "The flue is larger than it need be; at part load it is cold and fills with air from its end.",
	Mend:    "take a smaller flue, as far as the firing cases allow",
	Sources: sources(cite.Source{Work: "usual speeds in flues of condensing units", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		limit := p.Limit("flue-velocity-least")
		for _, kind := range [...]string{"run", "riser"} { // a header is slow where few units feed it
			for _, part := range p.Plant.ByKind(kind) {
				if f := p.AtLeast(p.Results.Get(part, "velocity", solve.AllFull), limit); f != nil {
					f.Message = "Products run through " + part.Label() + " at " + f.Found + " with all units at full fire; usual is at least " + limit.Text() + "."
					p.Report(part, *f)
				}
			}
		}
	},
}

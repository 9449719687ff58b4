package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/flue"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(check.Rule{
	ID: "terminal-too-near", Group: check.Flue, Severity: lang.Error, Since: "0.2",
	Summary: "A flue ends too near to an opening, a wall or the roof.",
	Why:     "Products come back into the building, or are pressed down onto people.",
	Mend:    "move the terminal",
	Limits:  "Grouped fanned units from 70 to 333 kW net outside the US; larger flues fall under the approval of the chimney height.",
	Sources: sources(flue.SourceTerminalUP10),
	Run: func(p *check.Pass) {
		for _, t := range p.Plant.ByKind("terminal") {
			if q := p.Results.Get(t, "net-input", solve.Always); q != nil && !q.Known() {
				p.Unknown(t, q.Missing)
				continue
			}
			for _, d := range [...]struct{ slot, what string }{{"from-window", "from an opening"}, {"from-facing", "from the wall it faces"}, {"above", "above the roof"}} {
				need, have := p.Results.Get(t, "least-"+d.slot, solve.Always), t.Get(d.slot)
				if !need.Known() {
					continue
				}
				if !have.Known() {
					if d.slot == "from-facing" || have.Absent() {
						continue // nothing stands opposite, as far as is stated
					}
					p.Unknown(t, "the distance of "+t.Label()+" ("+d.slot+")")
					continue
				}
				if have.Num >= need.Num*(1-1e-9) {
					continue
				}
				p.Report(t, check.Finding{
					Span: have.Span(), Found: lang.In(have.Num, "m"), Limit: "at least " + lang.In(need.Num, "m"), Quantity: need, Source: need.Formula.Source,
					Message: t.Label() + " ends " + lang.In(have.Num, "m") + " " + d.what + "; its units need " + lang.In(need.Num, "m") + ".",
				})
			}
		}
	},
})

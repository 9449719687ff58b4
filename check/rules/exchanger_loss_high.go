package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleExchangerLossHigh)

var ruleExchangerLossHigh = check.Rule{
	ID: "exchanger-loss-high", Group: check.Water, Severity: lang.Warning, Since: "0.3",
	Summary: "A plate exchanger loses more pressure on one side than is usual.",
	Why:     "The pumps work for the exchanger, and a little dirt stops the flow.",
	Mend:    "take an exchanger with more plates",
	Sources: sources(cite.Source{Work: "loss of each side of plate exchangers", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		limit := p.Limit("exchanger-loss-most")
		for _, e := range p.Plant.ByKind("exchanger") {
			for _, side := range [...]struct{ value, word string }{{"pressure-loss", "units"}, {"secondary-loss", "circuits"}} {
				q := p.Results.Get(e, side.value, solve.Always)
				if !q.Known() {
					continue // the rules about pumps say what is missing
				}
				if f := p.AtMost(q, limit); f != nil {
					f.Message = e.Label() + " loses " + f.Found + " on the side of the " + side.word + "; usual is up to " + limit.Text() + "."
					p.Report(e, *f)
				}
			}
		}
	},
}

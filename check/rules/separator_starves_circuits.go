package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/separator"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleSeparatorStarvesCircuits)

var ruleSeparatorStarvesCircuits = check.Rule{
	ID: "separator-starves-circuits", Group: check.Water, Severity: lang.Warning, Since: "0.2",
	Summary: "The circuits take more water than the units bring; their flow is colder than designed.",
	Why:     "Behind the separator return mixes into the flow, and the emitters do not reach their output.",
	Mend:    "raise the flow of the units, or lower that of the circuits",
	Sources: sources(separator.Source),
	Run: func(p *check.Pass) {
		limit := p.Limit("separator-shortfall-most")
		want := p.Plant.Block("basis").Get("secondary")
		for _, s := range p.Plant.ByKind("separator") {
			q := p.Results.Get(s, "secondary-temperature", solve.Always)
			if q == nil {
				continue
			}
			if !q.Known() || !want.Known() {
				needs := q.Missing
				if needs == "" {
					needs = "the temperatures of the circuits (secondary in the basis)"
				}
				p.Unknown(s, needs)
				continue
			}
			if short := want.Num - q.Num; short > limit.Num*(1+1e-9) {
				p.Report(s, check.Finding{Found: p.In(q.Num, "degC"), Limit: "at least " + p.In(want.Num-limit.Num, "degC"), Source: limit.Source, Quantity: q, Message: "Behind " + s.Label() + " the circuits get " + p.In(q.Num, "degC") + "; they are designed for " + p.In(want.Num, "degC") + "."})
			}
		}
	},
}

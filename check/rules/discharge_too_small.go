package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/valve"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleDischargeTooSmall)

var ruleDischargeTooSmall = check.Rule{
	ID: "discharge-too-small", Group: check.Pressure, Severity: lang.Warning, Since: "0.2",
	Summary: "The discharge pipe of safety valves is too small for its length.",
	Why:     "Steam and water dam up in the pipe, and the valve relieves less than it is rated for.",
	Mend:    "take the next size, or a shorter pipe with fewer bends",
	Sources: sources(valve.SourceDischarge, valve.SourceCommon),
	Run: func(p *check.Pass) {
		for _, d := range p.Plant.ByKind("discharge") {
			need := p.Results.Get(d, "needed-size", solve.Always)
			if need == nil {
				continue
			}
			size := d.Get("size")
			if !need.Known() || !size.Known() {
				needs := need.Missing
				if needs == "" {
					needs = "the size of " + d.Label()
				}
				p.Unknown(d, needs)
				continue
			}
			if size.Num >= need.Num*(1-0.03) { // 1 1/4 in and DN32 name one size
				continue
			}
			text := p.In(need.Num, "mm")
			p.Report(d, check.Finding{
				Span: size.Span(), Found: p.In(size.Num, "mm"), Limit: "at least " + text, Quantity: need, Source: need.Formula.Source,
				Message: "The discharge pipe has a nominal size of " + p.In(size.Num, "mm") + "; its largest valve, its length and its bends ask for " + text + ".",
			})
		}
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/lang"
)

var _ = register(&ruleFlueLeaksIntoAir)

var ruleFlueLeaksIntoAir = check.Rule{
	ID: "flue-leaks-into-air", Group: check.Record, Severity: lang.Warning, Device: true, Since: "0.2",
	Summary: "The combustion air of a unit holds products.",
	Why:     "The flue leaks, or the intake draws its own products: the unit makes carbon monoxide.",
	Mend:    "find the leak; do not leave the unit in use",
	Sources: sources(sourceRecord),
	Run: func(p *check.Pass) {
		least := p.Limit("intake-oxygen-least")
		for _, r := range readings(p.Plant) {
			v := r.part.Get("air-o2")
			if v.Known() && v.Num < least.Num*(1-1e-9) {
				p.Report(r.part, check.Finding{Part: r.unit.Label(), Span: v.Span(), Found: p.In(v.Num, "%"), Limit: "at least " + least.Text(), Source: least.Source, Message: "The combustion air of " + r.unit.Label() + " has " + p.In(v.Num, "%") + " of oxygen at " + r.fire() + "; products mix into it."})
			}
		}
	},
}

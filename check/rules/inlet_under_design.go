package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(check.Rule{
	ID: "inlet-under-design", Group: check.Record, Severity: lang.Error, Since: "0.2",
	Summary: "The gas pressure at a unit is well under what the design computes.",
	Why:     "A pipe is smaller, longer or more bent than drawn, or the supply is weak; at full fire units lock out.",
	Mend:    "compare the pipes with the drawing, and the pressure at the meter",
	Sources: sources(sourceDesign),
	Run: func(p *check.Pass) {
		tolerance := p.Limit("inlet-under-design-most")
		for _, s := range p.Plant.ByKind("simultaneous") {
			for _, r := range s.Children("inlet") {
				v := r.Get("pressure")
				for _, ref := range r.Subjects() {
					if ref.Part.Kind != "unit" || !v.Known() {
						continue
					}
					if noDesign(p, r) {
						return
					}
					q := p.Design.Get(ref.Part, "gas-pressure", solve.AllFull)
					if !q.Known() {
						p.Unknown(r, "the computed gas pressure at "+ref.Part.Label())
						continue
					}
					if v.Num < (q.Num-tolerance.Num)*(1-1e-9) {
						p.Report(r, check.Finding{Part: ref.Part.Label(), Span: v.Span(), Found: lang.In(v.Num, "mbar"), Limit: "at least " + lang.In(q.Num-tolerance.Num, "mbar"), Quantity: q, Source: tolerance.Source, Message: "With all units at full fire " + ref.Part.Label() + " has " + lang.In(v.Num, "mbar") + "; the design computes " + lang.In(q.Num, "mbar") + "."})
					}
				}
			}
		}
	},
})

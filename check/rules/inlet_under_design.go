package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleInletUnderDesign)

var ruleInletUnderDesign = check.Rule{
	ID: "inlet-under-design", Group: check.Record, Severity: lang.Error, Since: "0.2",
	Summary: "The gas pressure at a unit is well under what the design computes.",
	Why:     "A pipe is smaller, longer or more bent than drawn, or the supply is weak; at full fire units lock out.",
	Mend:    "compare the pipes with the drawing, and the pressure at the meter",
	Sources: sources(sourceDesign),
	Run: func(p *check.Pass) {
		tolerance := p.Limit("inlet-under-design-most")
		judge := func(part, unit *plant.Part, v plant.Value, when string) {
			if !v.Known() || noDesign(p, part) {
				return
			}
			q := p.Design.Get(unit, "gas-pressure", solve.AllFull)
			if !q.Known() {
				p.Unknown(part, "the computed gas pressure at "+unit.Label())
				return
			}
			if v.Num < (q.Num-tolerance.Num)*(1-1e-9) {
				p.Report(part, check.Finding{Part: unit.Label(), Span: v.Span(), Found: p.In(v.Num, "mbar"), Limit: "at least " + p.In(q.Num-tolerance.Num, "mbar"), Quantity: q, Source: tolerance.Source, Message: when + " " + unit.Label() + " has " + p.In(v.Num, "mbar") + "; with all units at full fire the design computes " + p.In(q.Num, "mbar") + "."})
			}
		}
		for _, s := range p.Plant.ByKind("simultaneous") {
			for _, r := range s.Children("inlet") {
				for _, ref := range r.Subjects() {
					if ref.Part.Kind == "unit" {
						judge(r, ref.Part, r.Get("pressure"), "With all units at full fire")
					}
				}
			}
		}
		// However few units fire, there is no less than with all of them.
		for _, r := range readings(p.Plant) {
			if v := r.part.Get("inlet"); !outside(r.unit, v) {
				judge(r.part, r.unit, v, "At "+r.fire())
			}
		}
	},
}

// outside tells a pressure outside the unit's own range, of which inlet-outside
// speaks.
func outside(unit *plant.Part, v plant.Value) bool {
	band := inletRange(unit.Plant(), unit)
	return band.Known() && (v.Num < band.Num*(1-1e-9) || v.Num > band.Num2*(1+1e-9))
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleInletOutside)

var ruleInletOutside = check.Rule{
	ID: "inlet-outside", Group: check.Record, Severity: lang.Error, Since: "0.2",
	Summary: "The gas pressure at a unit is outside its own range.",
	Why:     "Under the range it locks out, above it the valve is damaged.",
	Mend:    "mend the supply before the unit is left in use",
	Sources: sources(sourceUnitData),
	Run: func(p *check.Pass) {
		judge := func(at *plant.Part, u *plant.Part, v plant.Value) {
			band := inletRange(u.Plant(), u)
			if !v.Known() {
				return
			}
			if !band.Known() {
				p.Unknown(at, "the gas pressure that "+u.Label()+" needs (gas-inlet)")
				return
			}
			if v.Num < band.Num*(1-1e-9) || v.Num > band.Num2*(1+1e-9) {
				text := p.In(band.Num, "mbar") + " to " + p.In(band.Num2, "mbar")
				p.Report(at, check.Finding{Part: u.Label(), Span: v.Span(), Found: p.In(v.Num, "mbar"), Limit: text, Message: u.Label() + " has " + p.In(v.Num, "mbar") + " at its inlet; its data ask for " + text + "."})
			}
		}
		for _, r := range readings(p.Plant) {
			judge(r.part, r.unit, r.part.Get("inlet"))
			judge(r.part, r.unit, r.part.Get("static"))
		}
		for _, s := range p.Plant.ByKind("simultaneous") {
			for _, r := range s.Children("inlet") {
				for _, ref := range r.Subjects() {
					if ref.Part.Kind == "unit" {
						judge(r, ref.Part, r.Get("pressure"))
					}
				}
			}
		}
	},
}

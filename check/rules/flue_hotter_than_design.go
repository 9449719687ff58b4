package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/lang"
)

var _ = register(&ruleFlueHotterThanDesign)

var ruleFlueHotterThanDesign = check.Rule{
	ID: "flue-hotter-than-design", Group: check.Record, Severity: lang.Warning, Since: "0.2",
	Summary: "The products of a unit are much hotter than its data.",
	Why:     "The exchanger is fouled or the flow is too small; plastic flues soften.",
	Mend:    "clean the exchanger, and compare the water flow",
	Sources: sources(sourceUnitData),
	Run: func(p *check.Pass) {
		over := p.Limit("flue-over-data-most")
		for _, r := range readings(p.Plant) {
			v := r.part.Get("flue")
			if !v.Known() {
				continue
			}
			most, known := 0.0, false
			for _, t := range r.unit.Child("flue-data").Children("temperature") {
				if x := t.Get("temperature"); x.Known() && t.Get("at").Is(fireWord(r.full)) && x.Num > most {
					most, known = x.Num, true
				}
			}
			if !known {
				p.Unknown(r.part, "the flue temperature of "+r.unit.Label()+" in its data")
				continue
			}
			if v.Num > most+over.Num*(1+1e-9) {
				p.Report(r.part, check.Finding{Part: r.unit.Label(), Span: v.Span(), Found: p.In(v.Num, "degC"), Limit: "at most " + p.In(most+over.Num, "degC"), Source: over.Source, Message: "The products of " + r.unit.Label() + " have " + p.In(v.Num, "degC") + " at " + r.fire() + "; its data state " + p.In(most, "degC") + "."})
			}
		}
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/lang"
)

var _ = register(&ruleCoHigh)

var ruleCoHigh = check.Rule{
	ID: "co-high", Group: check.Record, Severity: lang.Warning, Since: "0.2",
	Summary: "A unit makes much carbon monoxide.",
	Why:     "What dilutes the reading hides a burner that burns badly.",
	Mend:    "find the cause, clean or set the burner, measure again",
	Sources: sources(sourceRecord),
	Run: func(p *check.Pass) {
		most := p.Limit("co-most")
		for _, r := range readings(p.Plant) {
			co := r.part.Get("co")
			if !co.Known() {
				continue
			}
			limit, source := most.Num, most.Source
			if own := r.unit.Child("combustion-limits").Get("co"); own.Known() && own.Num2 < limit {
				limit, source = own.Num2, sourceUnitData
			}
			if co.Num > limit*(1+1e-9) && !ratioOver(p, r) {
				p.Report(r.part, check.Finding{Part: r.unit.Label(), Span: co.Span(), Found: p.In(co.Num, "ppm"), Limit: "at most " + p.In(limit, "ppm"), Source: source, Message: r.unit.Label() + " makes " + p.In(co.Num, "ppm") + " of CO at " + r.fire() + "; " + p.In(limit, "ppm") + " is the most."})
			}
		}
	},
}

// ratioOver reports a reading of which co-ratio-high speaks.
func ratioOver(p *check.Pass, r reading) bool {
	limit := p.Limit("co-ratio-new").Num
	if r.owner.Kind == "log" {
		limit = p.Limit("co-ratio-stop").Num
	}
	ratio, ok := ratioOf(r.part)
	return ok && ratio > limit*(1+1e-9)
}

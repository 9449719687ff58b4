package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleCoRatioHigh)

var ruleCoRatioHigh = check.Rule{
	ID: "co-ratio-high", Group: check.Record, Severity: lang.Warning, Device: true, Since: "0.2",
	Summary: "The ratio of CO to CO2 is over the limit.",
	Why:     "The unit burns badly and fills a room with carbon monoxide when its flue fails.",
	Mend:    "find the cause, clean or set the burner, measure again; over 0.0080 do not leave the unit in use",
	Sources: sources(sourceCOBands),
	Run: func(p *check.Pass) {
		fresh, stop := p.Limit("co-ratio-new"), p.Limit("co-ratio-stop")
		for _, r := range readings(p.Plant) {
			co := r.part.Get("co")
			ratio, ok := ratioOf(r.part)
			if !ok || !credible(p, r.part) {
				continue // reading-missing or reading-impossible speaks of it
			}
			limit := fresh
			if r.owner.Kind == "log" {
				limit = stop // a unit in service may have aged up to here
			}
			if ratio <= limit.Num*(1+1e-9) {
				continue
			}
			f := check.Finding{
				Part: r.unit.Label(), Span: co.Span(), Found: lang.Num(ratio, 3), Limit: "at most " + lang.Num(limit.Num, 3), Source: limit.Source,
				Message: r.unit.Label() + " has a ratio of CO to CO2 of " + lang.Num(ratio, 3) + " at " + r.fire() + "; " + lang.Num(limit.Num, 3) + " is the most.",
			}
			if ratio > stop.Num*(1+1e-9) {
				f.Message += " It must not be left in use."
			}
			p.Report(r.part, f)
		}
	},
}

// ratioOf is the ratio of CO to CO2 of a reading.
func ratioOf(part *plant.Part) (ratio float64, ok bool) {
	co, co2 := part.Get("co"), part.Get("co2")
	if !co.Known() || co2.Num <= 0 { // not known is zero, too
		return 0, false
	}
	return co.Num / co2.Num, true
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleDetectorLevelsReversed)

var ruleDetectorLevelsReversed = check.Rule{
	ID: "detector-levels-reversed", Group: check.Air, Severity: lang.Error, Since: "0.1",
	Summary: "The alarm level of a detector is not below its shut-off level.",
	Why:     "The gas shuts before anybody is warned, or the alarm never sounds.",
	Mend:    "set the alarm below the shut-off",
	Sources: sources(cite.Source{Work: "order of alarm and shut-off", Read: cite.Published, Note: "logic of two levels"}),
	Run: func(p *check.Pass) {
		for _, d := range p.Plant.ByKind("detector") {
			for _, kind := range [...]string{"gas", "co"} {
				a, t := d.Get("alarm-"+kind), d.Get("trip-"+kind)
				if a.Known() && t.Known() && a.Num >= t.Num*(1-1e-9) {
					unit := "%LEL"
					if kind == "co" {
						unit = "ppm"
					}
					p.Report(d, check.Finding{Span: a.Span(), Found: p.In(a.Num, unit), Limit: "below " + p.In(t.Num, unit), Message: "The alarm of " + d.Label() + " at " + p.In(a.Num, unit) + " is not below its shut-off at " + p.In(t.Num, unit) + "."})
				}
			}
		}
	},
}

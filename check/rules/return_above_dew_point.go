package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/combustion"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleReturnAboveDewPoint)

var ruleReturnAboveDewPoint = check.Rule{
	ID: "return-above-dew-point", Group: check.Flue, Severity: lang.Note, Since: "0.1",
	Summary: "The design return is hotter than the dew point of the products.",
	Why:     "At design load the units do not condense and give the output of a dry unit.",
	Mend:    "lower the return temperature, or lead the flow by the weather so that it falls for most of the year",
	Sources: sources(combustion.SourceDewPoint),
	Run: func(p *check.Pass) {
		primary := p.Plant.Block("basis").Get("primary")
		for _, fl := range p.Plant.ByKind("flue") {
			part := fl.Child("flue-header")
			if part == nil {
				part = fl
			}
			q := p.Results.Get(part, "dew-point", 0)
			if !q.Known() || !primary.Known() {
				p.Unknown(fl, "the return temperature and the CO2 of the units")
				continue
			}
			if primary.Num2 <= q.Num {
				continue
			}
			year := ""
			if share := p.Results.Get(p.Plant.UnitGroup(), "heat-condensing", solve.Always); share.Known() {
				year = " Led by the weather it lies below for " + p.In(share.Num, "%") + " of the heat of a year."
			}
			p.Report(p.Plant.Block("basis").Child("primary"), check.Finding{
				Span: primary.Span(), Found: p.In(primary.Num2, "degC"), Limit: "below " + p.In(q.Num, "degC"), Source: combustion.SourceDewPoint, Quantity: q,
				Message: "The return of " + p.In(primary.Num2, "degC") + " is above the dew point of " + p.In(q.Num, "degC") + "; at design load the units do not condense." + year,
			})
			return
		}
	},
}

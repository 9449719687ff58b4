package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/treatment"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleFillWaterTooHard)

var ruleFillWaterTooHard = check.Rule{
	ID: "fill-water-too-hard", Group: check.Treatment, Severity: lang.Error, Since: "0.2",
	Summary: "The fill water is harder than the units bear.",
	Why:     "Scale settles where the burner heats most, and the exchanger cracks.",
	Mend:    "fill with demineralized water",
	Sources: sources(treatment.SourceVDI2021),
	Run: func(p *check.Pass) {
		block := p.Plant.Block("water-quality")
		fill := block.Child("fill-water")
		if fill == nil {
			return
		}
		most, have := p.Results.Get(block, "fill-hardness-most", solve.Always), fill.Get("hardness")
		switch {
		case most == nil:
		case !most.Known():
			p.Unknown(fill, most.Missing)
		case !have.Known():
			p.Unknown(fill, "the hardness of the fill water")
		case have.Num > most.Num*(1+1e-9):
			text := p.In(most.Num, "mmol/l")
			f := check.Finding{
				Span: have.Span(), Found: p.In(have.Num, "mmol/l"), Limit: "at most " + text, Quantity: most,
				Message: "The fill water has " + p.In(have.Num, "mmol/l") + "; for this output and water content " + text + " are allowed.",
			}
			if part, err := treatment.PartDemineralized(have.Num, most.Num); err == nil {
				f.Mend = "demineralize at least " + lang.Num(100*part, 3) + " % of the fill"
			}
			p.Report(fill, f)
		}
	},
}

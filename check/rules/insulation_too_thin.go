package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/insulation"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleInsulationTooThin)

var ruleInsulationTooThin = check.Rule{
	ID: "insulation-too-thin", Group: check.Insulation, Severity: lang.Warning, Since: "0.2",
	Summary: "The insulation of a pipe is thinner than the greatest heat loss allows.",
	Why:     "The plant room overheats and the heat is paid for all year.",
	Mend:    "take thicker insulation, or one that conducts less",
	Limits:  "Heating pipes up to 168 mm; the US table where the jurisdiction is US.",
	Sources: sources(insulation.SourceLimits, insulation.SourceUS),
	Run: func(p *check.Pass) {
		for _, part := range solve.WarmPipes(p.Plant) {
			need := p.Results.Get(part, "insulation-needed", solve.Always)
			if need == nil {
				continue
			}
			if !need.Known() {
				p.Unknown(part, need.Missing)
				continue
			}
			cover := solve.Cover(p.Plant, part)
			have := cover.Get("thickness")
			if have.Num >= need.Num*(1-1e-9) {
				continue
			}
			text := p.In(need.Num, need.Unit)
			f := check.Finding{
				Found: p.In(have.Num, need.Unit), Limit: "at least " + text, Source: insulation.SourceLimits, Quantity: need,
				Message: part.Label() + " is covered with " + p.In(have.Num, need.Unit) + "; it needs " + text + " of this material.",
			}
			if q := p.Results.Get(part, "heat-loss", solve.Always); q.Known() {
				most := p.Results.Get(part, "heat-loss-most", solve.Always)
				f.Found, f.Limit = p.In(q.Num, "W/m"), "at most "+p.In(most.Num, "W/m")
			} else {
				f.Source = insulation.SourceUS
			}
			p.Report(part, f)
		}
	},
}

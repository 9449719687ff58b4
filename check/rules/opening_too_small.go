package rules

import (
	"math"

	"example.org/tundish/check"
	"example.org/tundish/check/calc/ventilation"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleOpeningTooSmall)

var ruleOpeningTooSmall = check.Rule{
	ID: "opening-too-small", Group: check.Air, Severity: lang.Error, Since: "0.1",
	Summary: "The free area of the openings at one level is too small.",
	Why:     "The burners lack air and make carbon monoxide, and the room overheats.",
	Mend:    "enlarge the opening",
	Sources: sources(ventilation.SourceBS6644, ventilation.SourceOpenings),
	Run: func(p *check.Pass) {
		block := p.Plant.Block("air")
		for _, level := range [...]string{"high", "low"} {
			need := p.Results.Get(block, "needed-area-"+level, 0)
			if need == nil {
				continue // fans, or units that draw their air through ducts of their own
			}
			have := p.Results.Get(block, "free-area-"+level, 0)
			if !need.Known() || !have.Known() {
				for _, q := range [...]*solve.Quantity{need, have} {
					if q != nil && !q.Known() {
						p.Unknown(block, q.Missing)
					}
				}
				continue
			}
			if have.Num == 0 {
				continue // opening-missing speaks of it
			}
			f := p.AtLeast(have, p.NumberLimit(need.Num, lang.Area, need.Unit, need.Formula.Source))
			if f == nil {
				continue
			}
			f.Message = "The " + level + " openings have " + f.Found + " free; the units need " + p.In(need.Num, need.Unit) + "."
			for _, o := range block.Children("opening") {
				v := o.Get("free")
				if w := o.Get("level").Word; !v.Known() || w != level+"-level" && !(level == "low" && w == "floor-level") {
					continue
				}
				text := areaUp(need.Num-have.Num+v.Num, need.Unit)
				f.Span, f.Part = v.Span(), o.Label()
				f.Fixes = []lang.Fix{{Title: "Give " + o.Label() + " " + text + " free", Best: true, Edits: []lang.Edit{{Span: o.Stmt.Abs(v.Field.Values[0].Expr.Span), NewText: text}}}}
				break
			}
			p.Report(block, *f)
		}
	},
}

// areaUp is an area in m2 in whole units, rounded up.
func areaUp(m2 float64, unit string) string {
	u, ok := lang.LookupUnit(unit)
	if !ok {
		return lang.In(m2, unit)
	}
	return lang.Num(math.Ceil(lang.FromSI(m2, u)-1e-9), 8) + " " + unit
}

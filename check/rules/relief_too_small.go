package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/valve"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleReliefTooSmall)

var ruleReliefTooSmall = check.Rule{
	ID: "relief-too-small", Group: check.Pressure, Severity: lang.Error, Since: "0.2",
	Summary: "A safety valve relieves less heat than it must.",
	Why:     "With the burner stuck on, the pressure goes on rising with the valve open.",
	Mend:    "take the next size, or a valve with a stated capacity that is enough",
	Limits:  "By size only at 2.5 and 3 bar; else by the stated capacity.",
	Sources: sources(valve.SourceNominalSteps, valve.SourceNominalEnds, valve.SourceAD2000),
	Run: func(p *check.Pass) {
		for _, r := range p.Plant.ByKind("relief") {
			need, have := p.Results.Get(r, "relief-need", solve.Always), p.Results.Get(r, "relief-capacity", solve.Always)
			if need == nil || have == nil {
				continue
			}
			if !need.Known() {
				p.Unknown(r, need.Missing)
				continue
			}
			f := p.AtLeast(have, p.NumberLimit(need.Num, lang.Power, have.Unit, capacitySource(have)))
			if f == nil {
				continue
			}
			f.Message = reliefLabel(r) + " relieves " + f.Found + "; it must relieve " + p.In(need.Num, have.Unit) + "."
			if have.Formula == &solve.FormulaReliefSize { // then the size is stated
				v := r.Get("size")
				f.Span = v.Span()
				if s, err := valve.SizeFor(need.Num/1000, r.Get("set-pressure").Num/1e5); err == nil {
					text := "DN" + lang.Num(float64(s.Nominal), 4)
					f.Fixes = []lang.Fix{{Title: "Take " + text, Best: true, Edits: []lang.Edit{{Span: v.Stmt.Abs(v.Field.Values[0].Expr.Span), NewText: text}}}}
					f.Mend = "take " + text + ", or a valve with a stated capacity that is enough"
				}
			}
			p.Report(r, *f)
		}
	},
}

// reliefLabel names a safety valve at the start of a sentence.
func reliefLabel(r *plant.Part) string {
	if r.Owner != nil && r.Owner.Kind == "unit" {
		return "The safety valve of " + r.Owner.Label()
	}
	return r.Label()
}

// capacitySource is where the capacity comes from; of a missing one the table.
func capacitySource(q *solve.Quantity) cite.Source {
	if q.Formula == nil {
		return valve.SourceNominalSteps
	}
	return q.Formula.Source
}

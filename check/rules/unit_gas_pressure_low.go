package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleUnitGasPressureLow)

var ruleUnitGasPressureLow = check.Rule{
	ID: "unit-gas-pressure-low", Group: check.Gas, Severity: lang.Error, Since: "0.1",
	Summary: "A unit gets less gas pressure than it needs, with all units firing.",
	Why:     "It loses output, burns badly and locks out on the coldest day.",
	Mend:    "take larger pipes or have the supply pressure raised",
	Sources: sources(cite.Source{Work: "data of the unit", Read: cite.Published}),
	Run: func(p *check.Pass) {
		judgeInletPressure(p, true)
	},
}

// judgeInletPressure holds the working pressure at each unit against the range
// that the unit's data state for the plant's gas.
func judgeInletPressure(p *check.Pass, low bool) {
	const unit = "mbar"
	for _, u := range p.Plant.Units() {
		span := inletRange(p.Plant, u)
		q := p.Results.Get(u, "gas-pressure", solve.AllFull)
		if q == nil {
			continue
		}
		if !span.Known() {
			p.Unknown(u, "the gas pressure that "+u.Label()+" needs (gas-inlet)")
			continue
		}
		limit := p.StatedLimit(span, unit, "data of the unit")
		var f *check.Finding
		if low {
			if f = p.AtLeast(q, limit); f != nil {
				f.Message = u.Label() + " gets " + f.Found + " with all units at full fire; it needs " + p.In(span.Num, unit) + "."
				if fix, ok := cheapestUpsize(p, 0); ok {
					f.Fixes = []lang.Fix{fix}
				}
			}
		} else {
			limit.Num = span.Num2
			if f = p.AtMost(q, limit); f != nil {
				f.Message = u.Label() + " gets " + f.Found + "; its data allow at most " + p.In(span.Num2, unit) + "."
			}
		}
		if f != nil {
			p.Report(u, *f)
		}
	}
}

// inletRange is the gas pressure that a unit's data allow for the plant's gas.
func inletRange(pl *plant.Plant, u *plant.Part) (span plant.Value) {
	fuel := pl.Block("basis").Child("gas").Get("fuel")
	for _, s := range u.Children("gas-inlet") {
		if f := s.Get("for"); !f.Given || f.Is(fuel.Word) {
			span = s.Get("pressure")
		}
	}
	return span
}

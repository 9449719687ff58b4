package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleUnitGasPressureHigh)

var ruleUnitGasPressureHigh = check.Rule{
	ID: "unit-gas-pressure-high", Group: check.Gas, Severity: lang.Error, Since: "0.1",
	Summary: "A unit gets more gas pressure than it stands.",
	Why:     "Its gas valve leaks or locks out.",
	Mend:    "fit a regulator before the unit, or lower the supply pressure",
	Sources: sources(cite.Source{Work: "data of the unit", Read: cite.Published}),
	Run: func(p *check.Pass) {
		judgeInletPressure(p, false)
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleUnitWithoutGasValve)

var ruleUnitWithoutGasValve = check.Rule{
	ID: "unit-without-gas-valve", Group: check.Gas, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "A unit has no gas valve of its own.",
	Why:     "It cannot be shut off or serviced alone.",
	Mend:    "give each unit its own valve",
	Sources: sources(cite.Source{Work: "IGEM/UP/2", Read: cite.Memory}),
	Run: func(p *check.Pass) {
		for _, u := range p.Plant.Units() {
			switch v := u.Child("gas-valve"); {
			case v == nil:
				p.Absent(u, "the gas valve of "+u.Label(), check.Finding{Message: u.Label() + " has no gas valve of its own."})
			case v.First().Absent():
				p.Report(u, check.Finding{Span: v.Span(), Message: u.Label() + " has no gas valve of its own."})
			case v.Undecided():
				p.Unknown(v, "whether "+u.Label()+" has a gas valve")
			}
		}
	},
}

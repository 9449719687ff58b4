package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleRegisterNumberMissing)

var ruleRegisterNumberMissing = check.Rule{
	ID: "register-number-missing", Group: check.Handover, Severity: lang.Error, Since: "0.1",
	Summary: "An engineer who works on gas has no register number.",
	Why:     "Work on gas is for registered persons only.",
	Mend:    "state the number in the register",
	Sources: sources(cite.Source{Work: "Gas Safety (Installation and Use) Regulations 1998", Clause: "regulation 3, from memory; regulation 26", Read: cite.Published}),
	Run: func(p *check.Pass) {
		for _, person := range p.Plant.ByKind("person") {
			role := person.Get("role")
			if !role.Is("gas-engineer") && !role.Is("commissioning-engineer") {
				continue
			}
			v := person.Get("register")
			if v.Open() {
				p.Unknown(person, "the register number of "+person.Label())
				continue
			}
			if !v.Known() || v.Word == "" {
				p.Absent(person, "the register number", check.Finding{Message: person.Label() + " is a " + role.Word + " without a register number."})
			}
		}
	},
}

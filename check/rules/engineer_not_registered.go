package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleEngineerNotRegistered)

var ruleEngineerNotRegistered = check.Rule{
	ID: "engineer-not-registered", Group: check.Record, Severity: lang.Error, Since: "0.2",
	Summary: "Who worked on the gas side has no register number in the record or the design.",
	Why:     "Work on gas is for registered engineers only; the record proves nothing without the number.",
	Mend:    "state the engineer with the register number",
	Sources: sources(sourceExamine),
	Run: func(p *check.Pass) {
		seen := map[*plant.Part]bool{}
		check1 := func(at *plant.Part) {
			ref, ok := at.Ref("by")
			if !ok || seen[ref.Part] {
				return
			}
			seen[ref.Part] = true
			role := ref.Part.Get("role")
			switch {
			case !role.Known():
				p.Unknown(at, "the role of "+ref.Part.Label())
			case !role.Is("gas-engineer") && !role.Is("commissioning-engineer"):
				p.Report(at, check.Finding{Part: ref.Part.Label(), Found: role.Word, Limit: "gas-engineer or commissioning-engineer", Message: ref.Part.Label() + " worked on the gas side but is a " + role.Word + "."})
			case ref.Part.File == p.Plant.File: // of this file register-number-missing speaks
			case !ref.Part.Get("register").Known():
				p.Report(at, check.Finding{Part: ref.Part.Label(), Message: ref.Part.Label() + " worked on the gas side, but no register number is stated."})
			}
		}
		for _, c := range p.Plant.ByKind("commissioned") {
			check1(c)
		}
		for _, s := range p.Plant.ByKind("simultaneous") {
			check1(s)
		}
		for _, k := range [...]string{"tightness", "purge"} {
			for _, s := range recorded(p, "tested").Children(k) {
				check1(s)
			}
		}
		for _, l := range p.Plant.ByKind("log") {
			check1(l)
		}
	},
}

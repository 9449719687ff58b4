package rules

import (
	"strings"

	"example.org/tundish/check"
	"example.org/tundish/lang"
)

var _ = register(&ruleReadingMissing)

var ruleReadingMissing = check.Rule{
	ID: "reading-missing", Group: check.Record, Severity: lang.Error, Since: "0.2",
	Summary: "A unit was commissioned without a combustion reading at one of its rates.",
	Why:     "Nobody knows how the unit burns at that rate; many faults show at minimum rate only.",
	Mend:    "measure CO2 and CO at maximum and minimum rate",
	Sources: sources(sourceExamine, sourceRecord),
	Run: func(p *check.Pass) {
		for _, c := range commissioned(p.Plant) {
			for _, fire := range [...]string{"high-fire", "low-fire"} {
				r := c.part.Child(fire)
				lacks := ""
				switch {
				case r == nil:
					lacks = "readings"
				case !r.Get("co").Known():
					lacks = "a reading of CO"
				case !r.Get("co2").Known() && !r.Get("o2").Known():
					lacks = "a reading of CO2 or O2"
				default:
					continue
				}
				rate := "maximum"
				if fire == "low-fire" {
					rate = "minimum"
				}
				p.Absent(c.part, "its readings", check.Finding{Part: c.unit.Label(), Message: c.unit.Label() + " has no " + strings.TrimPrefix(strings.TrimPrefix(lacks, "a "), "an ") + " at " + rate + " rate."})
			}
		}
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleUnitCommissionedTwice)

var ruleUnitCommissionedTwice = check.Rule{
	ID: "unit-commissioned-twice", Group: check.Record, Severity: lang.Error, Since: "0.2",
	Summary: "A unit was commissioned twice in one record.",
	Why:     "One of the two readings belongs to another unit.",
	Mend:    "give each reading to its own unit",
	Sources: sources(sourceRecord),
	Run: func(p *check.Pass) {
		first := map[*plant.Part]*plant.Part{}
		for _, c := range commissioned(p.Plant) {
			was := first[c.unit]
			if was == nil {
				first[c.unit] = c.part
				continue
			}
			p.Report(c.part, check.Finding{Part: c.unit.Label(), Message: c.unit.Label() + " was commissioned already in this record.", Related: []lang.Related{{Span: was.Span(), Message: "first here"}}})
		}
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/lang"
)

var _ = register(&ruleStepNotInPlant)

var ruleStepNotInPlant = check.Rule{
	ID: "step-not-in-plant", Group: check.Record, Severity: lang.Error, Since: "0.2",
	Summary: "A record marks a step that its plant does not have.",
	Why:     "The mark belongs to another step or to another plant; the step that was meant stays open.",
	Mend:    "name the step that was done; tundish steps lists those of the plant",
	Sources: sources(sourceRecord),
	Run: func(p *check.Pass) {
		for _, f := range stepFaults(p) {
			if f.Before == "" {
				p.Report(f.Mark, check.Finding{Part: f.Step, Found: f.Step, Limit: "a step of the plant", Message: "The plant has nothing that the step " + f.Step + " would build or test."})
			}
		}
	},
}

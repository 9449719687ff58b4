package check

import (
	"fmt"

	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var languageSource = cite.Source{Work: "the plant language", Read: cite.Published}

// internalFinding says that the tool itself broke down in one rule; the rest of
// the report stands.
func internalFinding(p *plant.Plant, rule string, v any) Finding {
	return Finding{
		Rule: "internal-fault", Severity: lang.Error, File: p.File,
		Message: fmt.Sprintf("The rule %s broke down and decided nothing: %v.", rule, v),
		Mend:    "report this with the file; the fault is in the tool, not in the plant",
		Source:  languageSource,
	}
}

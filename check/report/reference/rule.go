// Package reference writes the reference of the rules and of the language. The
// pages follow from what the program knows of itself: the rules, the schema, and
// the plants that test the rules, which are run while the page is written.
package reference

import (
	"sort"

	"example.org/tundish/check"
	"example.org/tundish/lang"
)

// Rule is one rule, or one kind of fault of the text, as the reference tells it.
type Rule struct {
	ID       string   `json:"id"`
	Group    string   `json:"group"`
	Severity string   `json:"severity"`
	Status   string   `json:"status"`
	Since    string   `json:"since"`
	Summary  string   `json:"summary"`
	Why      string   `json:"why"`
	Mend     string   `json:"mend"`
	Limits   string   `json:"limits"` // what it does not cover
	Sources  []Source `json:"sources"`

	rule *check.Rule
}

// Source is a cited work with how it was read.
type Source struct {
	Source string `json:"source"`
	Read   string `json:"read"`
	Note   string `json:"note"`
}

// Rules tells of the rules given, and of every kind of fault that reading a text
// can report, in order of the id.
func Rules(list []*check.Rule) []Rule {
	out := make([]Rule, 0, len(list)+len(lang.ProblemKinds))
	for _, r := range list {
		out = append(out, ofRule(r))
	}
	for _, k := range lang.ProblemKinds {
		out = append(out, Rule{
			ID: k.ID, Group: string(check.Language), Severity: k.Severity.String(), Status: string(check.InForce),
			Summary: k.Summary, Why: k.Why, Mend: k.Mend, Sources: []Source{},
		})
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].ID < out[j].ID })
	return out
}

func ofRule(r *check.Rule) Rule {
	x := Rule{
		ID: r.ID, Group: string(r.Group), Severity: r.Severity.String(), Status: string(r.Status), Since: r.Since,
		Summary: r.Summary, Why: r.Why, Mend: r.Mend, Limits: r.Limits, Sources: []Source{}, rule: r,
	}
	if x.Status == "" {
		x.Status = string(check.InForce)
	}
	for _, s := range r.Sources {
		x.Sources = append(x.Sources, Source{s.String(), string(s.Read), s.Note})
	}
	return x
}

package rules

import (
	"sort"

	"example.org/tundish/check"
	"example.org/tundish/lang"
)

// Set in init because the rules of the registry cannot name it while it is
// being filled.
var allIDs func() []string

func init() {
	allIDs = func() []string {
		var out []string
		for _, r := range All() {
			out = append(out, r.ID)
		}
		for _, k := range lang.ProblemKinds {
			out = append(out, k.ID)
		}
		sort.Strings(out)
		return out
	}
}

var _ = register(&ruleDeviationFromUnknownRule)

var ruleDeviationFromUnknownRule = check.Rule{
	ID: "deviation-from-unknown-rule", Group: check.Intent, Severity: lang.Error, Last: true, Since: "0.1",
	Summary: "A deviation names a rule that does not exist.",
	Why:     "It accepts nothing, though somebody thinks that it does.",
	Mend:    "name a rule of the list of tundish explain",
	Sources: sources(designersOwn),
	Run: func(p *check.Pass) {
		for _, d := range p.Plant.ByKind("deviation") {
			id := d.Get("rule")
			if !id.Known() {
				continue
			}
			ids := allIDs()
			if i := sort.SearchStrings(ids, id.Word); i < len(ids) && ids[i] == id.Word {
				continue
			}
			f := check.Finding{Part: "deviation", Span: id.Span(), Message: "There is no rule " + id.Word + "."}
			if near := lang.Suggest(id.Word, ids); near != "" {
				f.Mend = "did you mean " + near + "?"
				f.Fixes = []lang.Fix{{Title: "Write " + near, Best: true, Edits: []lang.Edit{{Span: id.Span(), NewText: near}}}}
			}
			p.Report(d, f)
		}
	},
}

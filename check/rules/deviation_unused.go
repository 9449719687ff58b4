package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/lang"
)

var _ = register(&ruleDeviationUnused)

var ruleDeviationUnused = check.Rule{
	ID: "deviation-unused", Group: check.Intent, Severity: lang.Warning, Last: true, Since: "0.1",
	Summary: "A deviation accepts nothing: its finding is gone.",
	Why:     "An exception that nothing needs hides the next fault of that kind.",
	Mend:    "take the deviation out",
	Limits:  "A deviation whose rule could not decide for want of input counts as not evaluated.",
	Sources: sources(designersOwn),
	Run: func(p *check.Pass) {
		for _, d := range p.Plant.ByKind("deviation") {
			id := d.Get("rule")
			if !id.Known() || p.Used(d) > 0 || Find(id.Word) == nil {
				continue
			}
			if expired, known := p.Expired(d); known && expired {
				continue // deviation-expired speaks of it
			}
			if p.Undecided(id.Word) {
				p.Unknown(d, "what the rule "+id.Word+" needs")
				continue
			}
			p.Absent(d, "the finding it accepts", check.Finding{
				Part: "deviation", Message: "The deviation from " + id.Word + " accepts nothing; no such finding is there.",
				Fixes: []lang.Fix{{Title: "Take the deviation out", Safe: true, Best: true, Edits: []lang.Edit{{Span: wholeLine(d.File.Source, d.Span())}}}},
			})
		}
	},
}

// wholeLine widens a span to the lines it stands on, line end included.
func wholeLine(src *lang.Source, s lang.Span) lang.Span {
	return lang.Span{Start: src.LineStart(src.LineOf(s.Start)), End: src.LineStart(src.LineOf(s.End) + 1)}
}

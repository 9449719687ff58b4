package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleOpeningCanBeClosed)

var ruleOpeningCanBeClosed = check.Rule{
	ID: "opening-can-be-closed", Group: check.Air, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "A ventilation opening can be closed.",
	Why:     "Somebody closes it in winter, and the burners lack air.",
	Mend:    "take openings that nothing can close",
	Sources: sources(cite.Source{Work: "BS 6644", Read: cite.Practice, Note: "as quoted in trade literature"}),
	Run: func(p *check.Pass) {
		for _, o := range p.Plant.ByKind("opening") {
			if o.Has("closable") {
				f := check.Finding{Message: o.Label() + " can be closed."}
				if fl := o.Bound.Field("closable"); fl != nil {
					f.Span = o.Stmt.Abs(fl.Span)
					f.Fixes = []lang.Fix{{Title: "Make it non-closable", Best: true, Edits: []lang.Edit{{Span: f.Span, NewText: "non-closable"}}}}
				}
				p.Report(o, f)
			}
		}
	},
}

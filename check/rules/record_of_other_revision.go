package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/lang"
)

var _ = register(&ruleRecordOfOtherRevision)

var ruleRecordOfOtherRevision = check.Rule{
	ID: "record-of-other-revision", Group: check.Record, Severity: lang.Error, Since: "0.2",
	Summary: "A record belongs to another revision of the plant than the one beside it.",
	Why:     "What was built is compared with a design that it was not built by.",
	Mend:    "put the revision that was built beside the record, or say which was built",
	Sources: sources(sourceDesign),
	Run: func(p *check.Pass) {
		st := p.Plant.One("of-plant")
		if st == nil || noDesign(p, st) {
			return
		}
		built, there := st.Get("revision"), p.Plant.Of.One("plant").Get("revision")
		switch {
		case !built.Known():
			p.Unknown(st, "the revision of the plant that was built (revision)")
		case !there.Known():
			p.Unknown(st, "the revision of the plant")
		case built.Word != there.Word:
			p.Report(st, check.Finding{Span: built.Span(), Found: built.Word, Limit: there.Word, Message: "The record belongs to revision " + built.Word + "; the plant beside it is revision " + there.Word + "."})
		}
	},
}

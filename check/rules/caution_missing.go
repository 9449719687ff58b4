package rules

import (
	"strconv"

	"example.org/tundish/check"
	"example.org/tundish/check/cautions"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleCautionMissing)

var ruleCautionMissing = check.Rule{
	ID: "caution-missing", Group: check.Cautions, Severity: lang.Error, Since: "0.1",
	Summary: "The specification lacks a caution that its contents call for.",
	Why:     "Whoever works from the paper must be told what can hurt. A caution never replaces the registered engineer or the local code.",
	Mend:    "add the caution",
	Sources: []cite.Source{
		{Work: "Gas Safety (Installation and Use) Regulations 1998", Clause: "regulation 26; regulation 3 from memory", Read: cite.Published},
		{Work: "LOLER 1998 and Manual Handling Operations Regulations 1992", Read: cite.Published},
		{Work: "Control of Asbestos Regulations 2012", Clause: "regulation 5", Read: cite.Memory},
		{Work: "HSG274 part 2, hot water", Read: cite.Published},
	},
	Run: func(p *check.Pass) {
		have, open := map[string]bool{}, false
		for _, c := range p.Plant.ByKind("caution") {
			have[c.Get("topic").Word] = true
			open = open || c.Get("topic").Open() || c.Undecided()
		}
		for i := range cautions.Triggers {
			t := &cautions.Triggers[i]
			if have[t.Topic] {
				continue
			}
			part := t.Part(p.Plant)
			if part == nil {
				continue
			}
			if open {
				p.Unknown(part, "the topic of each caution")
				continue
			}
			at := endOfFile(p.Plant)
			p.Absent(part, "the caution "+t.Topic, check.Finding{
				Severity: t.Severity, Source: t.Source, Part: part.Label(),
				Message: "The plant has " + t.Because + ", but the specification carries no caution on " + t.Topic + ".",
				Mend:    `add: caution ` + t.Topic + ` ` + strconv.Quote(t.Text),
				Fixes:   []lang.Fix{{Title: "Add the caution on " + t.Topic, Safe: true, Best: true, Edits: []lang.Edit{{Span: at, NewText: "caution " + t.Topic + " " + strconv.Quote(t.Text) + "\n"}}}},
			})
		}
	},
}

// endOfFile is where a fix adds statements.
func endOfFile(pl *plant.Plant) lang.Span {
	n := len(pl.File.Source.Text)
	return lang.Span{Start: n, End: n}
}

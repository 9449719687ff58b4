package rules

import (
	"strings"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleHandoverIncomplete)

var ruleHandoverIncomplete = check.Rule{
	ID: "handover-incomplete", Group: check.Record, Severity: lang.Error, Since: "0.2",
	Summary: "Something that the design hands over is missing from the record.",
	Why:     "Who keeps the plant cannot run or check it without the papers and the instruction.",
	Mend:    "hand it over and record it",
	Sources: sources(sourceDesign),
	Run: func(p *check.Pass) {
		h := recorded(p, "handed-over")
		if h == nil || noDesign(p, h) {
			return
		}
		want := p.Plant.Of.Block("handover")
		have := map[string]bool{}
		for _, d := range h.Children("document") {
			for v := range d.List("documents") {
				have[v.Word] = true
			}
		}
		var lacks []string
		for _, d := range want.Children("document") {
			for v := range d.List("documents") {
				if !have[v.Word] {
					lacks = append(lacks, strings.ReplaceAll(v.Word, "-", " "))
				}
			}
		}
		if len(lacks) > 0 {
			p.Absent(h, "the documents", check.Finding{Message: "Not handed over: " + strings.Join(lacks, ", ") + "."})
		}
		signed := map[*plant.Part]bool{}
		for _, s := range h.Children("signed") {
			for _, ref := range s.Subjects() {
				signed[ref.Part] = true
			}
		}
		for _, i := range want.Children("instructed") {
			for _, ref := range i.Subjects() {
				if !signed[ref.Part] {
					p.Absent(h, "the signature of "+ref.Part.Label(), check.Finding{Part: ref.Part.Label(), Message: ref.Part.Label() + " is to be instructed but did not sign."})
				}
			}
			if by, ok := i.Ref("by"); ok && !signed[by.Part] {
				p.Absent(h, "the signature of "+by.Part.Label(), check.Finding{Part: by.Part.Label(), Message: by.Part.Label() + " is to instruct but did not sign."})
			}
		}
	},
}

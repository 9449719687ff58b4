package rules

import (
	"strings"

	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

// handoverBasics are the papers without which a gas plant is not run.
var handoverBasics = [...]string{"operating-manual", "log-book", "gas-certificate", "electrical-certificate"}

var _ = register(&ruleHandoverBasicsMissing)

var ruleHandoverBasicsMissing = check.Rule{
	ID: "handover-basics-missing", Group: check.Handover, Severity: lang.Warning, Since: "0.2",
	Summary: "A plant is handed over without a paper that every gas plant needs.",
	Why:     "Who keeps the plant cannot run it safely, and cannot show that it is safe.",
	Mend:    "hand it over and record it",
	Limits:  "What the design itself asks for is the matter of handover-incomplete.",
	Sources: sources(cite.Source{Work: "handing over a gas plant", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		h := recorded(p, "handed-over")
		if h == nil {
			return
		}
		settled := map[string]bool{} // handed over, or asked for by the design
		for _, d := range h.Children("document") {
			for v := range d.List("documents") {
				settled[v.Word] = true
			}
		}
		if len(unsettled(settled)) == 0 || noDesign(p, h) {
			return
		}
		for _, d := range p.Plant.Of.Block("handover").Children("document") {
			for v := range d.List("documents") {
				settled[v.Word] = true
			}
		}
		if lacks := unsettled(settled); len(lacks) > 0 {
			p.Absent(h, "the documents", check.Finding{Message: "Neither asked for by the design nor handed over: " + strings.Join(lacks, ", ") + "."})
		}
	},
}

// unsettled lists the papers of every plant that are not in the set, as words.
func unsettled(settled map[string]bool) []string {
	var lacks []string
	for _, d := range handoverBasics {
		if !settled[d] {
			lacks = append(lacks, strings.ReplaceAll(d, "-", " "))
		}
	}
	return lacks
}

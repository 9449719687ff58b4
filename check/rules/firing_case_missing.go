package rules

import (
	"strings"

	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleFiringCaseMissing)

var ruleFiringCaseMissing = check.Rule{
	ID: "firing-case-missing", Group: check.Flue, Severity: lang.Error, Since: "0.1",
	Summary: "A shared flue was not checked in all firing cases.",
	Why:     "The hard case is one unit at minimum against all others at full fire; a check at full fire alone does not see it.",
	Mend:    "have all-full, one-low and one-alone checked and name them in firing-cases",
	Sources: sources(cite.Source{Work: "EN 13384-2", Clause: "cases of operation of a flue with several units", Read: cite.Published}),
	Run: func(p *check.Pass) {
		for _, fl := range p.Plant.ByKind("flue") {
			if len(fl.Children("connector")) < 2 {
				continue
			}
			s := fl.Child("firing-cases")
			if s == nil || s.First().Open() {
				p.Unknown(fl, "the firing cases that "+fl.Label()+" was checked in")
				continue
			}
			have := map[string]bool{}
			for v := range s.List("cases") {
				have[v.Word] = true
			}
			add := ""
			for _, c := range [...]string{"all-full", "one-low", "one-alone"} {
				if !have[c] {
					add += ", " + c
				}
			}
			if add == "" {
				continue
			}
			end := s.Stmt.HeadSpan().End
			cases := " the case" + add[1:]
			if strings.Count(add, ",") > 1 {
				cases = " the cases" + add[1:]
			}
			p.Report(fl, check.Finding{
				Span: s.Span(), Message: fl.Label() + " is not said to have been checked in" + cases + ".",
				Fixes: []lang.Fix{{Title: "Name" + cases, Best: true, Edits: []lang.Edit{{Span: lang.Span{Start: end, End: end}, NewText: add}}}},
			})
		}
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/flue"
	"example.org/tundish/lang"
)

var _ = register(&ruleFlueFallNotStated)

var ruleFlueFallNotStated = check.Rule{
	ID: "flue-fall-not-stated", Group: check.Flue, Severity: lang.Warning, Since: "0.1",
	Summary: "A horizontal piece of a flue states no fall.",
	Why:     "The fitter sets what the paper does not say, and the condensate shows the result.",
	Mend:    "state the fall and what it falls towards",
	Sources: sources(flue.SourceFall),
	Run: func(p *check.Pass) {
		for _, kind := range [...]string{"connector", "flue-header", "run"} {
			for _, part := range p.Plant.ByKind(kind) {
				if part.Get("falls").Open() || part.Undecided() {
					p.Unknown(part, "the fall of "+part.Label())
					continue
				}
				if rise := part.Get("rise"); part.Get("falls").Known() || rise.Known() && rise.Num != 0 && part.Kind == "run" {
					continue
				}
				end := part.Stmt.HeadSpan().End
				f := check.Finding{Message: part.Label() + " states no fall; a condensing flue wants 3 degrees back to its trap or unit."}
				if part.Kind == "connector" {
					if e := part.Bound.Field("from"); e != nil && len(e.Values) == 1 {
						f.Fixes = []lang.Fix{{Title: "State a fall of 3 degrees to the unit", Best: true, Edits: []lang.Edit{{Span: lang.Span{Start: end, End: end}, NewText: " falls 3 deg towards " + part.Stmt.Head.Text[e.Values[0].Expr.Span.Start:e.Values[0].Expr.Span.End]}}}}
					}
				}
				p.Absent(part, "a fall", f)
			}
		}
	},
}

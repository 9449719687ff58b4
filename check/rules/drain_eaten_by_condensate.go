package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleDrainEatenByCondensate)

var ruleDrainEatenByCondensate = check.Rule{
	ID: "drain-eaten-by-condensate", Group: check.Condensate, Severity: lang.Error, Since: "0.1",
	Summary: "A condensate pipe or drain is of a material that condensate eats.",
	Why:     "Copper, steel and concrete do not last under pH 3 to 5.",
	Mend:    "use plastic, stoneware or stainless steel",
	Sources: sources(cite.Source{Work: "DWA-A 251", Clause: "materials", Read: cite.Published, Note: "list of fit materials as quoted"}),
	Run: func(p *check.Pass) {
		bad := map[string]bool{"copper": true, "steel": true, "concrete": true, "cast-iron": true}
		for _, kind := range [...]string{"condensate-pipe", "gully"} {
			for _, part := range p.Plant.ByKind(kind) {
				v := part.Get("material")
				if !v.Known() || !bad[v.Word] || kind == "gully" && len(p.Plant.ByKind("neutraliser")) > 0 || neutralised(part) {
					continue
				}
				if part.Get("from").Open() {
					p.Unknown(part, "what leads into "+part.Label())
					continue
				}
				f := check.Finding{Span: v.Span(), Found: v.Word, Limit: "plastic, stoneware or stainless", Message: part.Label() + " is of " + v.Word + ", which condensate of pH 3 to 5 eats."}
				if kind == "condensate-pipe" {
					f.Fixes = []lang.Fix{{Title: "Use polypropylene", Best: true, Edits: []lang.Edit{{Span: part.Stmt.Abs(v.Field.Values[0].Expr.Span), NewText: "polypropylene"}}}}
				}
				p.Report(part, f)
			}
		}
	},
}

// neutralised tells a pipe that takes nothing but what a neutralizer has treated.
func neutralised(pipe *plant.Part) bool {
	from := pipe.Refs("from")
	for _, r := range from {
		if r.Part.Kind != "neutraliser" {
			return false
		}
	}
	return len(from) > 0
}

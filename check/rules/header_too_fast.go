package rules

import (
	"math"
	"strings"

	"example.org/tundish/check"
	"example.org/tundish/check/calc/pipe"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleHeaderTooFast)

var ruleHeaderTooFast = check.Rule{
	ID: "header-too-fast", Group: check.Water, Severity: lang.Warning, Since: "0.1",
	Summary: "Water runs too fast through a common header.",
	Why:     "A fast header no longer equalizes the pressure between the units.",
	Mend:    "take the next header size or a wider temperature difference",
	Sources: sources(cite.Source{Work: "common headers between units and separation", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		limit := p.Limit("header-velocity-most")
		for _, h := range p.Plant.ByKind("header") {
			f := p.AtMost(p.Results.Get(h, "velocity", solve.Always), limit)
			if f == nil {
				continue
			}
			f.Message = "Water runs through " + h.Label() + " at " + f.Found + "; above " + limit.Text() + " a header no longer equalizes the units."
			f.Fixes = nextWaterSize(h, f.Quantity.Num/limit.Num)
			if len(f.Fixes) > 0 {
				f.Mend = strings.ToLower(f.Fixes[0].Title[:1]) + f.Fixes[0].Title[1:]
			}
			p.Report(h, *f)
		}
	},
}

// nextWaterSize offers the smallest size whose area is larger by the factor.
func nextWaterSize(part *plant.Part, factor float64) []lang.Fix {
	v := part.Get("size")
	now := pipe.Find(part.Get("material").Word, v.Num)
	if now == nil || v.Field == nil {
		return nil
	}
	want := now.Bore() * math.Sqrt(factor)
	for n := now.Above(); n != nil; n = n.Above() {
		if n.Bore() >= want*(1-1e-9) {
			return []lang.Fix{{Title: "Take " + part.Label() + " in " + n.Size, Best: true, Edits: []lang.Edit{{Span: part.Stmt.Abs(v.Field.Values[0].Expr.Span), NewText: n.Size}}}}
		}
	}
	return nil
}

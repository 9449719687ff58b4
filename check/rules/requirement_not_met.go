package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var designersOwn = cite.Source{Work: "the designer's own requirement", Read: cite.Published}

var _ = register(&ruleRequirementNotMet)

var ruleRequirementNotMet = check.Rule{
	ID: "requirement-not-met", Group: check.Intent, Severity: lang.Error, Since: "0.1",
	Summary: "A requirement of the designer's own does not hold.",
	Why:     "The designer wrote it down because the plant must meet it.",
	Mend:    "change the plant, or the requirement with its reason",
	Sources: sources(designersOwn),
	Run: func(p *check.Pass) {
		for _, r := range p.Plant.ByKind("require") {
			f := r.Bound.Field("condition")
			if f == nil || len(f.Values) == 0 || f.Values[0].Expr == nil {
				continue
			}
			if r.Get("condition").Open() {
				p.Unknown(r, "the condition of the requirement")
				continue
			}
			e := f.Values[0].Expr
			l, right, holds, err := p.Compare(e)
			switch {
			case err != nil && err.Missing:
				p.Unknown(r, err.Text)
				continue
			case err != nil && p.Plant.Damaged():
				p.Unknown(r, "a file that can be read whole; "+err.Text)
				continue
			case err != nil:
				p.Report(r, check.Finding{Span: r.Stmt.Abs(err.Span), Part: "require", Message: "The requirement cannot be computed: " + err.Text + ".", Mend: "use values that the tool computes or the text states, in fitting units"})
				continue
			case holds:
				continue
			}
			text := r.Stmt.Head.Text
			unit := right.Unit
			if unit == "" {
				unit = l.Unit
			}
			p.Report(r, check.Finding{
				Span: r.Stmt.Abs(e.Span), Part: "require", Found: term(p, l, unit), Limit: e.Op() + " " + term(p, right, unit),
				Message: "The requirement " + text[e.Span.Start:e.Span.End] + " does not hold: " + term(p, l, unit) + " against " + term(p, right, unit) + ".",
			})
		}
	},
}

func term(p *check.Pass, t check.Term, unit string) string {
	if t.Pure {
		return lang.Num(t.Num, 4)
	}
	if u, ok := lang.LookupUnit(unit); ok && u.Dim == t.Dim {
		return lang.In(t.Num, unit)
	}
	system := lang.Metric
	if p.Plant.US() {
		system = lang.US
	}
	return lang.Quantity(t.Num, t.Dim, system)
}

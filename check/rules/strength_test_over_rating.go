package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleStrengthTestOverRating)

var ruleStrengthTestOverRating = check.Rule{
	ID: "strength-test-over-rating", Group: check.Testing, Severity: lang.Error, Since: "0.2",
	Summary: "A strength test is made with more pressure than a part in it is rated for.",
	Why:     "A unit's exchanger or a vessel bursts at the test, or is weakened unseen; a safety valve opens.",
	Mend:    "shut off or take off what is rated for less, and state it: relief-isolated units-isolated vessels-isolated",
	Limits:  "Units, safety valves, vessels and exchangers are looked at; fittings and instruments are not.",
	Sources: sources(cite.Source{Work: "pressure rating of the part", Read: cite.Published}),
	Run: func(p *check.Pass) {
		for _, s := range p.Plant.Block("tests").Children("strength") {
			overRating(p, s, p.Results.Get(s, "weakest-rating", solve.Always), 0)
		}
		t := recorded(p, "tested")
		if len(t.Children("strength")) == 0 || noDesign(p, t) {
			return
		}
		for _, s := range t.Children("strength") {
			for _, d := range p.Plant.Of.Block("tests").Children("strength") {
				if sameSubjects(s, d) {
					overRating(p, s, p.Design.Get(d, "weakest-rating", solve.Always), d.Get("pressure").Num)
				}
			}
		}
	},
}

// overRating holds the pressure of a test against the weakest part that stays in
// it; asked is the pressure of the design, which the design's own check judges.
func overRating(p *check.Pass, s *plant.Part, q *solve.Quantity, asked float64) {
	v := s.Get("pressure")
	switch {
	case q == nil || !v.Known() || v.Num <= asked*(1+1e-6):
	case !q.Known():
		p.Unknown(s, q.Missing)
	case v.Num > q.Num*(1+1e-6):
		part := ""
		for _, in := range q.Inputs {
			part = in.Text
		}
		unit := written(v, "bar")
		p.Report(s, check.Finding{Span: v.Span(), Found: lang.In(v.Num, unit), Limit: "at most " + lang.In(q.Num, unit), Quantity: q, Message: "The strength test is made with " + lang.In(v.Num, unit) + ", but " + part + " is rated for " + lang.In(q.Num, unit) + " and nothing says that it is shut off."})
	}
}

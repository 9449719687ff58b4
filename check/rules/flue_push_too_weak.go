package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/flue"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleFluePushTooWeak)

var ruleFluePushTooWeak = check.Rule{
	ID: "flue-push-too-weak", Group: check.Flue, Severity: lang.Error, Since: "0.1",
	Summary: "A unit cannot push its products into the flue in one of the firing cases.",
	Why:     "The weak unit starves and shuts down, or its products find another way out, into the room or into a stopped unit.",
	Mend:    "take the next flue size, a shorter way or fewer bends",
	Limits:  "Products are taken at the stated temperatures; the maker's own calculation goes first.",
	Sources: sources(flue.SourceBalance),
	Run: func(p *check.Pass) {
		limit := p.NumberLimit(0, lang.Pressure, "Pa", flue.SourceBalance)
		words := map[solve.Case]string{solve.AllFull: "with all units at full fire", solve.OneLow: "at minimum fire with the others at full fire", solve.OneAlone: "alone at minimum fire", solve.ColdStart: "alone in a cold flue", solve.DamperOpen: "at full fire, with the damper of a stopped unit stuck open,"}
		for _, u := range p.Plant.Units() {
			for _, k := range [...]solve.Case{solve.AllFull, solve.OneLow, solve.OneAlone, solve.ColdStart, solve.DamperOpen} {
				f := p.AtLeast(p.Results.Get(u, "flue-margin", k), limit)
				if f == nil {
					continue
				}
				q := f.Quantity
				f.Message = u.Label() + " " + words[k] + " lacks " + p.In(-q.Num, "Pa") + " to push its products out."
				f.Found, f.Limit = p.In(q.Num, "Pa")+" left over", "at least "+p.In(0, "Pa")
				for _, in := range q.Inputs {
					if in.Name == "p at the outlet of the unit" {
						f.Related = append(f.Related, lang.Related{Span: q.Part.Span(), Message: "the flue stands at " + p.In(in.Num, "Pa") + " at this unit"})
					}
				}
				f.Fixes = nextFlueSize(p, u)
				p.Report(u, *f)
			}
		}
	},
}

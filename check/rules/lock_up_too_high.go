package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleLockUpTooHigh)

var ruleLockUpTooHigh = check.Rule{
	ID: "lock-up-too-high", Group: check.Gas, Severity: lang.Error, Since: "0.3",
	Summary: "Without flow the regulator lets the pressure rise over what a unit stands.",
	Why:     "The gas valve of a unit at rest leaks, or the unit locks out before it lights.",
	Mend:    "take a regulator with a lower lock-up pressure",
	Sources: sources(cite.Source{Work: "International Fuel Gas Code", Edition: "2018", Clause: "appendix A.1", Read: cite.Published, Note: "the pressure at least flow must not exceed the rating of the appliance's own regulator"}),
	Run: func(p *check.Pass) {
		var last *plant.Part // of several in a row the one that holds the least
		for _, r := range p.Plant.ByKind("regulator") {
			out := r.Get("outlet")
			if out.Open() && r.Get("lock-up").Given {
				p.Unknown(r, "the pressure that "+r.Label()+" holds (outlet)")
				return
			}
			if out.Known() && (last == nil || out.Num < last.Get("outlet").Num) {
				last = r
			}
		}
		v := last.Get("lock-up")
		if !v.Known() {
			if v.Given {
				p.Unknown(last, "the pressure behind "+last.Label()+" without flow (lock-up)")
			}
			return
		}
		for _, u := range p.Plant.Units() {
			span := inletRange(p.Plant, u)
			if !span.Known() {
				p.Unknown(u, "the gas pressure that "+u.Label()+" stands (gas-inlet)")
				continue
			}
			if v.Num > span.Num2*(1+1e-9) {
				p.Report(last, check.Finding{
					Span: v.Span(), Part: u.Label(), Found: p.In(v.Num, "mbar"), Limit: "at most " + p.In(span.Num2, "mbar"), Severity: lang.Error,
					Message: "Without flow " + last.Label() + " lets the pressure rise to " + p.In(v.Num, "mbar") + "; " + u.Label() + " stands at most " + p.In(span.Num2, "mbar") + ".",
				})
			}
		}
	},
}

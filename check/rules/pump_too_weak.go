package rules

import (
	"strings"

	"example.org/tundish/check"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&rulePumpTooWeak)

var rulePumpTooWeak = check.Rule{
	ID: "pump-too-weak", Group: check.Water, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "A unit pump does not reach the design flow.",
	Why:     "The unit runs hot and locks out at full fire.",
	Mend:    "take a stronger pump, or larger branches",
	Sources: sources(solve.FormulaPumpMargin.Source),
	Run: func(p *check.Pass) {
		zero := p.NumberLimit(0, lang.Pressure, "kPa", solve.FormulaPumpMargin.Source)
		for _, u := range p.Plant.Units() {
			q := p.Results.Get(u, "pump-margin", solve.AllFull)
			f := p.AtLeast(q, zero)
			if f == nil {
				continue
			}
			need := p.Results.Get(u, "needed-head", solve.AllFull)
			f.Severity = lang.Error // the curve and the loss are the maker's and the pipe's own
			f.Found, f.Limit = p.In(need.Num+q.Num, "kPa"), "at least "+p.In(need.Num, "kPa")
			f.Message = "The pump of " + u.Label() + " gives " + f.Found + " at the design flow; " + p.In(need.Num, "kPa") + " are needed."
			f.Mend = "take a stronger pump, or larger branches:"
			for _, in := range q.Inputs {
				if in.Dim == lang.Pressure && in.Name != "pump head" {
					f.Mend += " " + in.Name + " " + p.In(in.Num, "kPa") + ","
				}
			}
			f.Mend = strings.TrimSuffix(f.Mend, ",")
			p.Report(u, *f)
		}
	},
}

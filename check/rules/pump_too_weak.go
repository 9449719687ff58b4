package rules

import (
	"strings"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&rulePumpTooWeak)

var rulePumpTooWeak = check.Rule{
	ID: "pump-too-weak", Group: check.Water, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "A pump does not reach its design flow.",
	Why:     "The unit runs hot and locks out at full fire; behind the separation the far circuits stay cold.",
	Mend:    "take a stronger pump, or larger branches",
	Sources: sources(solve.FormulaPumpMargin.Source),
	Run: func(p *check.Pass) {
		for _, u := range p.Plant.Units() {
			judgePump(p, u, "The pump of "+u.Label(), solve.AllFull)
		}
		for _, pump := range p.Plant.Block("secondary").Children("plant-pump") {
			judgePump(p, pump, pump.Label(), solve.Always)
		}
	},
}

// judgePump holds the head of a pump against what its design flow loses; at is the
// part that has the values, and says names the pump.
func judgePump(p *check.Pass, at *plant.Part, says string, c solve.Case) {
	q := p.Results.Get(at, "pump-margin", c)
	f := p.AtLeast(q, p.NumberLimit(0, lang.Pressure, "kPa", solve.FormulaPumpMargin.Source))
	if f == nil {
		return
	}
	need := p.Results.Get(at, "needed-head", c)
	f.Severity = lang.Error // the curve and the loss are the maker's and the pipe's own
	f.Found, f.Limit = p.In(need.Num+q.Num, "kPa"), "at least "+p.In(need.Num, "kPa")
	f.Message = says + " gives " + f.Found + " at the design flow; " + p.In(need.Num, "kPa") + " are needed."
	if c == solve.Always {
		f.Mend = "take a stronger pump, or larger pipes"
		p.Report(at, *f)
		return
	}
	f.Mend = "take a stronger pump, or larger branches:"
	for _, in := range q.Inputs {
		if in.Dim == lang.Pressure && in.Name != "pump head" {
			f.Mend += " " + in.Name + " " + p.In(in.Num, "kPa") + ","
		}
	}
	f.Mend = strings.TrimSuffix(f.Mend, ",")
	p.Report(at, *f)
}

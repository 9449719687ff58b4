package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/condensate"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleDrainTooSmall)

var ruleDrainTooSmall = check.Rule{
	ID: "drain-too-small", Group: check.Condensate, Severity: lang.Error, Since: "0.1",
	Summary: "A condensate pipe is smaller than its units need.",
	Why:     "A drain that backs up floods the units and stops them.",
	Mend:    "take a larger pipe",
	Sources: sources(condensate.SourceSmallDrain),
	Run: func(p *check.Pass) {
		heat := 0.0
		for _, u := range p.Plant.Units() {
			h, ok := solve.NetInput(p.Plant, u.Child("input"))
			if !ok {
				p.Unknown(u, "the heat input of "+u.Label()+" with its basis")
				return
			}
			heat += h
		}
		for _, pipe := range p.Plant.ByKind("condensate-pipe") {
			bore := solve.DrainBore(pipe)
			if bore == 0 {
				p.Unknown(pipe, "the size of "+pipe.Label())
				continue
			}
			place := condensate.Inside
			if pipe.Get("route").Is("outside") {
				place = condensate.Outside
			}
			need, source, err := condensate.LeastBore(heat, len(pipe.Refs("from")), place)
			if err != nil {
				p.Unknown(pipe, err.Error())
				continue
			}
			if bore >= need*(1-1e-9) {
				continue
			}
			p.Report(pipe, check.Finding{Found: p.In(bore, "mm"), Limit: "at least " + p.In(need, "mm"), Source: source, Message: pipe.Label() + " has a bore of " + p.In(bore, "mm") + "; the condensate of its units asks for " + p.In(need, "mm") + "."})
		}
	},
}

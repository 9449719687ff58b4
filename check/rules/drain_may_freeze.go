package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleDrainMayFreeze)

var ruleDrainMayFreeze = check.Rule{
	ID: "drain-may-freeze", Group: check.Condensate, Severity: lang.Warning, Since: "0.1",
	Summary: "A condensate pipe outdoors is bare, thin or long.",
	Why:     "A frozen drain stops the plant on the coldest day.",
	Mend:    "insulate it, take at least 30 mm and keep it under 3 m",
	Sources: sources(cite.Source{Work: "BS 6798", Clause: "condensate drains", Read: cite.Published, Note: "for units up to 70 kW, as quoted"}),
	Run: func(p *check.Pass) {
		bore, length := p.Limit("outside-drain-bore"), p.Limit("outside-drain-length")
		for _, pipe := range p.Plant.ByKind("condensate-pipe") {
			if !pipe.Get("route").Is("outside") {
				continue
			}
			say := func(what string) {
				p.Report(pipe, check.Finding{Message: pipe.Label() + " runs outdoors and " + what + "."})
			}
			if !pipe.Has("insulated") {
				say("has no insulation")
			}
			if b := solve.DrainBore(pipe); b > 0 && b < bore.Num*(1-1e-9) {
				say("has a bore of " + p.In(b, "mm") + ", under " + bore.Text())
			}
			if l := pipe.Get("length"); l.Known() && l.Num > length.Num*(1+1e-9) {
				say("is " + p.In(l.Num, "m") + " long, over " + length.Text())
			}
		}
	},
}

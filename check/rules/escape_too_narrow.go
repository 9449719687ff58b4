package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleEscapeTooNarrow)

var ruleEscapeTooNarrow = check.Rule{
	ID: "escape-too-narrow", Group: check.Frame, Severity: lang.Warning, Since: "0.2",
	Summary: "The way out past the plant is narrow.",
	Why:     "Whoever works on the units must get out when gas, steam or smoke drives them.",
	Mend:    "keep the way clear, or turn the frame",
	Sources: sources(cite.Source{Work: "clear width of the way out of a plant room", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		e := p.Plant.Block("room").Child("escape")
		v, limit := e.First(), p.Limit("escape-least")
		if e == nil || !v.Known() || v.Num >= limit.Num*(1-1e-9) {
			if e != nil && !v.Known() {
				p.Unknown(e, "the clear width of the way out (escape)")
			}
			return
		}
		unit := written(v, limit.Unit)
		p.Report(e, check.Finding{Found: lang.In(v.Num, unit), Limit: "at least " + lang.In(limit.Num, unit), Source: limit.Source, Message: "The way out is " + lang.In(v.Num, unit) + " wide."})
	},
}

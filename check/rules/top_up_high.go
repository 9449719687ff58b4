package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/treatment"
	"example.org/tundish/lang"
)

var _ = register(&ruleTopUpHigh)

var ruleTopUpHigh = check.Rule{
	ID: "top-up-high", Group: check.Treatment, Severity: lang.Warning, Since: "0.2",
	Summary: "More water is topped up in a year than a tight plant loses.",
	Why:     "Each top-up brings hardness and oxygen; the exchangers scale and the steel rusts.",
	Mend:    "find the leak, or check the vessel",
	Sources: sources(treatment.SourceTopUpYear),
	Run: func(p *check.Pass) {
		st := p.Plant.Block("water-quality").Child("top-up")
		v := st.Get("volume")
		if v.Open() {
			p.Unknown(st, "the water topped up in a year")
		}
		if !v.Known() {
			return
		}
		content, whole := 0.0, true
		for _, c := range p.Plant.Block("safety").Children("content") {
			volume := c.Get("volume")
			content += volume.Num
			whole = whole && volume.Known()
		}
		share := p.Limit("top-up-share-most")
		if content > 0 && v.Num <= share.Num*content*(1+1e-9) {
			return // what is not stated only adds to the content
		}
		if content == 0 || !whole {
			p.Unknown(st, "the water content of the circuits (content)")
			return
		}
		p.Report(st, check.Finding{
			Span: v.Span(), Found: p.In(v.Num, "l"), Limit: "at most " + p.In(share.Num*content, "l"), Source: share.Source,
			Message: "In a year " + p.In(v.Num, "l") + " are topped up, " + lang.Num(100*v.Num/content, 3) + " % of the content; a tight plant takes " + share.Text() + " at most.",
		})
	},
}

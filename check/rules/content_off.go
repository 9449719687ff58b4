package rules

import (
	"math"

	"example.org/tundish/check"
	"example.org/tundish/lang"
)

var _ = register(&ruleContentOff)

var ruleContentOff = check.Rule{
	ID: "content-off", Group: check.Record, Severity: lang.Warning, Since: "0.2",
	Summary: "The water metered at filling is not the content of the design.",
	Why:     "The vessel and the water treatment were chosen for another content.",
	Mend:    "correct the content in the design and look at the vessel again",
	Sources: sources(sourceDesign),
	Run: func(p *check.Pass) {
		st := recorded(p, "settings")
		v := st.Child("system-volume").Get("volume")
		if !v.Known() || noDesign(p, st) {
			return
		}
		contents := p.Plant.Of.Block("safety").Children("content")
		total, known := 0.0, len(contents) > 0
		for _, c := range contents {
			x := c.Get("volume")
			total, known = total+x.Num, known && x.Known()
		}
		if !known {
			p.Unknown(st, "the water content of the design (content)")
			return
		}
		if tolerance := p.Limit("content-tolerance"); math.Abs(v.Num-total) > tolerance.Num*total*(1+1e-9) {
			p.Report(st.Child("system-volume"), check.Finding{Span: v.Span(), Found: p.In(v.Num, "l"), Limit: p.In(total, "l") + " within " + tolerance.Text(), Source: tolerance.Source, Message: "At filling " + p.In(v.Num, "l") + " were metered; the design states " + p.In(total, "l") + "."})
		}
	},
}

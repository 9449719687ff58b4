package rules

import (
	"strings"

	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleStandardsDoNotFit)

var ruleStandardsDoNotFit = check.Rule{
	ID: "standards-do-not-fit", Group: check.Basis, Severity: lang.Warning, Since: "0.1",
	Summary: "The plant is larger than the cited standards cover.",
	Why:     "The small standards allow what a large plant must not have.",
	Mend:    "cite BS 6644, IGEM/UP/10 and IGEM/UP/2",
	Sources: sources(cite.Source{Work: "BS 5440 and BS 6644", Read: cite.Published, Note: "scopes: up to and above 70 kW net in total"}),
	Run: func(p *check.Pass) {
		if abroad(p.Plant) {
			return
		}
		s := p.Plant.Block("basis").Child("standard")
		var small []string
		for v := range s.List("standard") {
			if strings.Contains(v.Word, "5440") || strings.Contains(v.Word, "6798") {
				small = append(small, v.Word)
			}
		}
		q := p.Results.Group(p.Plant.UnitGroup(), "input-net", solve.Total, solve.Always)
		if len(small) == 0 || q == nil {
			return
		}
		if !q.Known() {
			p.Unknown(s, q.Missing)
			return
		}
		limit := p.Limit("small-plant")
		if q.Num <= limit.Num*(1+1e-9) {
			return
		}
		if nationOpen(p, s) {
			return
		}
		for _, word := range small {
			p.Report(s, check.Finding{Found: word + " at " + p.In(q.Num, "kW") + " net", Limit: "up to " + limit.Text() + " net", Source: limit.Source, Quantity: q, Message: "The plant totals " + p.In(q.Num, "kW") + " net, but cites " + word + ", which holds up to " + limit.Text() + "."})
		}
	},
}

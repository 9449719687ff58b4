package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleGasMarginUsedUp)

var ruleGasMarginUsedUp = check.Rule{
	ID: "gas-margin-used-up", Group: check.Gas, Severity: lang.Warning, Since: "0.1",
	Summary: "More than nine tenths of the allowed gas loss are used.",
	Why:     "Nothing can be added or changed later, and a measured bend more breaks the limit.",
	Mend:    "take the next size now",
	Sources: sources(cite.Source{Work: "margin for later change", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		block := p.Plant.Block("gas-run")
		id, ok := gasDropLimit(p.Plant)
		q := p.Results.Get(block, "pressure-loss", solve.AllFull)
		if block == nil || !ok || !q.Known() {
			return
		}
		limit, share := p.Limit(id), p.Limit("gas-margin-share")
		if q.Num > limit.Num*(1+1e-9) || q.Num <= limit.Num*share.Num*(1+1e-9) {
			return
		}
		p.Report(block, check.Finding{Found: p.In(q.Num, limit.Unit), Limit: "at most " + p.In(limit.Num*share.Num, limit.Unit), Source: share.Source, Quantity: q, Message: "The gas run uses " + p.In(q.Num, limit.Unit) + " of the allowed " + limit.Text() + "; little is left for later."})
	},
}

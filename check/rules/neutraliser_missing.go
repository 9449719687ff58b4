package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/condensate"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleNeutraliserMissing)

var ruleNeutraliserMissing = check.Rule{
	ID: "neutraliser-missing", Group: check.Condensate, Severity: lang.Warning, Since: "0.1",
	Summary: "A plant over 200 kW has no neutralizer.",
	Why:     "Condensate of pH 3 to 5 eats drains and sewers.",
	Mend:    "add a neutralizer before the drain",
	Sources: sources(condensate.SourceNeutralizer),
	Run: func(p *check.Pass) {
		block := p.Plant.Block("condensate")
		if block == nil {
			return
		}
		limit := p.Limit("neutraliser-from")
		heat := p.Results.Group(p.Plant.UnitGroup(), "input-net", solve.Total, solve.Always)
		switch {
		case heat == nil || len(block.Children("neutraliser")) > 0:
		case !heat.Known():
			p.Unknown(block, heat.Missing)
		case heat.Num > limit.Num*(1+1e-9):
			p.Absent(block, "the neutralizer", check.Finding{Found: p.In(heat.Num, "kW") + " net", Limit: "up to " + limit.Text() + " without", Source: limit.Source, Quantity: heat, Message: "A plant of " + p.In(heat.Num, "kW") + " net has no neutralizer; above " + limit.Text() + " one is good practice."})
		}
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/gas"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&rulePurgeTooLittle)

var rulePurgeTooLittle = check.Rule{
	ID: "purge-too-little", Group: check.Testing, Severity: lang.Error, Since: "0.1",
	Summary: "The purge lets less gas through than the installation volume needs.",
	Why:     "Air stays in the pipes and reaches a burner.",
	Mend:    "purge the needed volume",
	Sources: sources(gas.SourcePurge),
	Run: func(p *check.Pass) {
		block := p.Plant.Block("gas-run")
		for _, t := range p.Plant.Block("tests").Children("purge") {
			if nationOpen(p, t) {
				continue
			}
			v := t.Get("volume")
			q := p.Results.Get(block, "purge-volume", solve.Always)
			if q == nil {
				continue
			}
			if !q.Known() || !v.Known() {
				p.Unknown(t, "the installation volume and the purge volume")
				continue
			}
			if v.Num >= q.Num*(1-1e-9) {
				continue
			}
			text := p.In(q.Num, "m3")
			p.Report(t, check.Finding{Span: v.Span(), Found: p.In(v.Num, "m3"), Limit: "at least " + text, Source: gas.SourcePurge, Quantity: q, Message: "The purge lets " + p.In(v.Num, "m3") + " through; this installation needs " + text + "."})
		}
	},
}

package rules

import (
	"math"

	"example.org/tundish/check"
	"example.org/tundish/check/calc/gas"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleStatedVolumeContradicts)

var ruleStatedVolumeContradicts = check.Rule{
	ID: "stated-volume-contradicts", Group: check.Gas, Severity: lang.Warning, Since: "0.1",
	Summary: "The stated installation volume does not match the pipes.",
	Why:     "Test time and purge follow from the volume.",
	Mend:    "replace it by the computed volume",
	Sources: sources(gas.SourceInstallationVolume),
	Run: func(p *check.Pass) {
		block := p.Plant.Block("gas-run")
		s := block.Child("volume")
		v := s.First()
		q := p.Results.Get(block, "installation-volume", solve.Always)
		if !v.Known() || q == nil {
			return
		}
		if !q.Known() {
			p.Unknown(s, q.Missing)
			return
		}
		if math.Abs(v.Num-q.Num) <= 0.05*q.Num {
			return
		}
		text := p.In(q.Num, "m3")
		p.Report(s, check.Finding{Span: v.Span(), Found: p.In(v.Num, "m3"), Limit: text + " within 5 %", Source: gas.SourceInstallationVolume, Quantity: q, Message: "The installation volume is said to be " + p.In(v.Num, "m3") + "; the pipes and the meter make " + text + ".", Fixes: []lang.Fix{{Title: "Write " + text, Best: true, Edits: []lang.Edit{{Span: s.Stmt.Abs(v.Field.Values[0].Expr.Span), NewText: text}}}}})
	},
}

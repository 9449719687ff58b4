package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleFlushingTooLittle)

var ruleFlushingTooLittle = check.Rule{
	ID: "flushing-too-little", Group: check.Testing, Severity: lang.Warning, Since: "0.2",
	Summary: "A circuit is flushed with less water than it holds.",
	Why:     "Some of the dirty water stays in the circuit, with the sludge it carries.",
	Mend:    "flush with at least the content of the circuit, until the water runs clear",
	Limits:  "The velocity that lifts sludge is that of the standard of flushing agreed, and is not judged.",
	Sources: sources(cite.Source{Work: "flushing of heating circuits", Read: cite.Practice, Note: "at least once the content"}),
	Run: func(p *check.Pass) {
		for _, s := range p.Plant.Block("tests").Children("flushing") {
			v, side := s.Get("volume"), s.Get("side")
			have := circuitContent(p.Plant, side.Word)
			switch unit := written(v, "l"); {
			case v.Open():
				p.Unknown(s, "the water to flush with")
			case !v.Known(): // a velocity instead
			case !side.Known():
				p.Unknown(s, "which circuit is flushed")
			case !have.Known():
				p.Unknown(s, "the content of the "+side.Word+" circuit (content)")
			case v.Num < have.Num*(1-1e-6):
				p.Report(s, check.Finding{Span: v.Span(), Found: lang.In(v.Num, unit), Limit: "at least " + lang.In(have.Num, unit), Message: "The " + side.Word + " circuit holds " + lang.In(have.Num, unit) + " and is flushed with " + lang.In(v.Num, unit) + "."})
			}
		}
	},
}

// circuitContent is the water of a circuit as it is stated: with the pressures,
// or with the circuits of the building.
func circuitContent(pl *plant.Plant, side string) plant.Value {
	for _, c := range pl.Block("safety").Children("content") {
		if c.Get("side").Is(side) {
			return c.Get("volume")
		}
	}
	if side == "secondary" {
		return pl.Block("secondary").Child("content").First()
	}
	return plant.Value{}
}

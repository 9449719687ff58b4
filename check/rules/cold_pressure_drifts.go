package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleColdPressureDrifts)

var ruleColdPressureDrifts = check.Rule{
	ID: "cold-pressure-drifts", Group: check.Record, Severity: lang.Warning, Since: "0.2",
	Summary: "The cold pressure fell much since the readings before.",
	Why:     "Water is lost, or the vessel lost its gas; soon the low-pressure cut-out stops the plant.",
	Mend:    "look for the leak and measure the precharge of the vessel without water",
	Sources: sources(sourceRecord),
	Run: func(p *check.Pass) {
		limit := p.Limit("drift-pressure-most")
		was := map[string]*plant.Part{}
		for _, f := range recorded(p, "settings").Children("fill") {
			was[f.Get("side").Word] = f
		}
		for _, l := range p.Plant.ByKind("log") {
			for _, now := range l.Children("pressure") {
				side := now.Get("side").Word
				before := was[side]
				a, b := before.Get("pressure"), now.Get("pressure")
				if !b.Known() {
					continue // the next reading is held against the one before
				}
				was[side] = now
				switch {
				case !a.Known():
					p.Unknown(now, "the cold pressure of the "+side+" circuit as it was left (fill)")
				case a.Num-b.Num > limit.Num*(1+1e-9):
					p.Report(now, check.Finding{
						Part: "log", Span: b.Span(), Found: p.In(b.Num, "bar"), Limit: p.In(a.Num, "bar") + " within " + limit.Text(), Source: limit.Source,
						Message: "The cold pressure is " + p.In(b.Num, "bar") + "; at the readings before it was " + p.In(a.Num, "bar") + ".",
						Related: []lang.Related{{Span: before.Span(), Message: "the pressure before"}},
					})
				}
			}
		}
	},
}

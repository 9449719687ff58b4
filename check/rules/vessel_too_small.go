package rules

import (
	"math"

	"example.org/tundish/check"
	"example.org/tundish/check/calc/vessel"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/check/tables"
	"example.org/tundish/lang"
)

var _ = register(&ruleVesselTooSmall)

var ruleVesselTooSmall = check.Rule{
	ID: "vessel-too-small", Group: check.Pressure, Severity: lang.Error, Since: "0.2",
	Summary: "The expansion vessels of a circuit are too small.",
	Why:     "The safety valve lifts at each heating-up, and the circuit loses water and takes in air.",
	Mend:    "take a larger vessel, or a lower precharge where the height allows it",
	Limits:  "Diaphragm vessels from 40 to 110 degC; the US form where the jurisdiction is US.",
	Sources: sources(vessel.SourceEN12828, vessel.SourceASHRAE),
	Run: func(p *check.Pass) {
		for _, v := range p.Plant.ByKind("vessel") {
			need, have := p.Results.Get(v, "needed-volume", solve.Always), p.Results.Get(v, "installed-volume", solve.Always)
			if need == nil || have == nil {
				continue // a further vessel of the circuit, or no room for any
			}
			if !need.Known() {
				p.Unknown(v, need.Missing)
				continue
			}
			f := p.AtLeast(have, p.NumberLimit(need.Num, lang.Volume, have.Unit, need.Formula.Source))
			if f == nil {
				continue
			}
			if other := unplacedVessel(p.Plant, v); other != nil {
				p.Unknown(v, "the side that "+other.Label()+" stands on")
				continue
			}
			size := v.Get("volume")
			f.Span = size.Span()
			f.Message = "The circuit of " + v.Label() + " has vessels of " + f.Found + "; it needs " + p.In(need.Num, have.Unit) + "."
			if text := standardVolume(need.Num-have.Num+size.Num, have.Unit); text != "" {
				f.Fixes = []lang.Fix{{Title: "Take " + v.Label() + " with " + text, Best: true, Edits: []lang.Edit{{Span: v.Stmt.Abs(size.Field.Values[0].Expr.Span), NewText: text}}}}
				f.Mend = "take " + v.Label() + " with " + text + ", or a lower precharge where the height allows it"
			}
			p.Report(v, *f)
		}
	},
}

// unplacedVessel is another vessel of which it is open where it stands, and which
// may help this one.
func unplacedVessel(pl *plant.Plant, v *plant.Part) *plant.Part {
	for _, o := range pl.ByKind("vessel") {
		if o != v && (o.Get("side").Open() || o.Undecided()) {
			return o
		}
	}
	return nil
}

// standardVolume is the smallest usual vessel that holds a volume in m3.
func standardVolume(volume float64, unit string) string {
	id := "vessel-volume-l"
	if unit == "gal" {
		id = "vessel-volume-gal"
	}
	s := tables.StandardSizes(id)
	v, ok := s.Above(math.Max(volume*(1-1e-9), 0) * (1 - 1e-8))
	if !ok {
		return ""
	}
	return lang.Num(v, 6) + " " + s.Unit
}

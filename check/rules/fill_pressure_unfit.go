package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/vessel"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleFillPressureUnfit)

var ruleFillPressureUnfit = check.Rule{
	ID: "fill-pressure-unfit", Group: check.Pressure, Severity: lang.Warning, Since: "0.2",
	Summary: "The cold fill pressure does not fit the vessel.",
	Why:     "Filled too low, the vessel holds no reserve and air is drawn in; filled too high, the safety valve lifts when the circuit is hot.",
	Mend:    "fill between the least and the most",
	Sources: sources(vessel.SourceEN12828),
	Run: func(p *check.Pass) {
		safety := p.Plant.Block("safety")
		for _, v := range p.Plant.ByKind("vessel") {
			least, most := p.Results.Get(v, "least-fill", solve.Always), p.Results.Get(v, "most-fill", solve.Always)
			if !least.Known() || !most.Known() {
				continue // no vessel of this size serves at any fill; vessel-too-small says so
			}
			fill, st := fillOf(safety, v)
			switch {
			case !fill.Known():
				p.Unknown(v, "the cold fill pressure of the circuit of "+v.Label()+" (fill)")
			case fill.Num < least.Num*(1-1e-9), fill.Num > most.Num*(1+1e-9):
				band := p.In(least.Num, least.Unit) + " to " + p.In(most.Num, most.Unit)
				p.Report(st, check.Finding{
					Span: fill.Span(), Found: p.In(fill.Num, least.Unit), Limit: band, Quantity: most,
					Message: "Filled to " + p.In(fill.Num, least.Unit) + " cold, the circuit of " + v.Label() + " does not fit its vessel, which serves from " + band + ".",
				})
			}
		}
	},
}

// fillOf finds the stated fill of a vessel's circuit.
func fillOf(safety, v *plant.Part) (plant.Value, *plant.Part) {
	side := v.Get("side")
	for _, s := range safety.Children("fill") {
		if o := s.Get("side"); o.Word == side.Word || !side.Given && o.Is("primary") {
			return s.Get("pressure"), s
		}
	}
	return plant.Value{}, nil
}

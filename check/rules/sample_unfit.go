package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleSampleUnfit)

var ruleSampleUnfit = check.Rule{
	ID: "sample-unfit", Group: check.Record, Severity: lang.Warning, Since: "0.2",
	Summary: "A water sample is outside the range of the design.",
	Why:     "Outside its range the water eats steel or aluminum, or leaves scale.",
	Mend:    "treat the water and sample again",
	Sources: sources(sourceDesign),
	Run: func(p *check.Pass) {
		for _, s := range p.Plant.ByKind("water-sample") {
			if noDesign(p, s) {
				return
			}
			q := p.Plant.Of.Block("water-quality")
			ph, band := s.Get("acidity"), q.Child("acidity").Get("acidity")
			if ph.Known() && band.Known() && (ph.Num < band.Num*(1-1e-9) || ph.Num > band.Num2*(1+1e-9)) {
				p.Report(s, check.Finding{Span: ph.Span(), Found: lang.Num(ph.Num, 3) + " pH", Limit: lang.Num(band.Num, 3) + " to " + lang.Num(band.Num2, 3) + " pH", Message: "The water has " + lang.Num(ph.Num, 3) + " pH; the design keeps it from " + lang.Num(band.Num, 3) + " to " + lang.Num(band.Num2, 3) + "."})
			}
			c, cb := s.Get("conductivity"), q.Child("conductivity").Get("conductivity")
			if c.Known() && cb.Known() && (c.Num < cb.Num*(1-1e-9) || c.Num > cb.Num2*(1+1e-9)) {
				p.Report(s, check.Finding{Span: c.Span(), Found: p.In(c.Num, "uS/cm"), Limit: p.In(cb.Num, "uS/cm") + " to " + p.In(cb.Num2, "uS/cm"), Message: "The water conducts " + p.In(c.Num, "uS/cm") + "; the design keeps it from " + p.In(cb.Num, "uS/cm") + " to " + p.In(cb.Num2, "uS/cm") + "."})
			}
			h, most := s.Get("hardness"), p.Design.Get(q, "fill-hardness-most", solve.Always)
			switch {
			case !h.Known() || most == nil:
			case !most.Known():
				p.Unknown(s, most.Missing)
			case h.Num > most.Num*(1+1e-9):
				p.Report(s, check.Finding{Span: h.Span(), Found: p.In(h.Num, "mmol/l"), Limit: "at most " + p.In(most.Num, "mmol/l"), Quantity: most, Source: most.Formula.Source, Message: "The water has a hardness of " + p.In(h.Num, "mmol/l") + "; " + p.In(most.Num, "mmol/l") + " are allowed."})
			}
		}
	},
}

package rules

import (
	"math"

	"example.org/tundish/check"
	"example.org/tundish/check/calc/condensate"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleTrapSealTooSmall)

var ruleTrapSealTooSmall = check.Rule{
	ID: "trap-seal-too-small", Group: check.Condensate, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "The water seal of a trap is lower than the pressure on it, with 25 mm kept back.",
	Why:     "The flue blows the trap out, and products leave through the drain.",
	Mend:    "take a trap with a higher seal",
	Sources: sources(condensate.SourceTrap),
	Run: func(p *check.Pass) {
		limit := p.NumberLimit(0, lang.Pressure, "Pa", condensate.SourceTrap)
		judge := func(part *plant.Part, label string) {
			f := p.AtLeast(p.Results.Get(part, "seal-margin", 0), limit)
			if f == nil {
				return
			}
			seal := part.Get("seal")
			pressure := 0.0
			for _, in := range f.Quantity.Inputs {
				if in.Name == "pressure" {
					pressure = in.Num
				}
			}
			need, err := condensate.SealFor(pressure)
			if err != nil {
				p.Unknown(part, err.Error())
				return
			}
			text := lang.Num(math.Ceil(need*1000), 6) + " mm"
			if p.Plant.US() { // quarters of an inch
				text = lang.Num(math.Ceil(need/0.0254*4)/4, 6) + " in"
			}
			f.Part, f.Severity = label, lang.Warning // the 25 mm are practice
			if seal.Num < (need-condensate.KeptBack)*(1-1e-9) {
				f.Severity = lang.Error // hydrostatics: it is blown out
			}
			f.Found, f.Limit = p.In(seal.Num, "mm"), "at least "+text
			f.Message = "The trap of " + label + " has a seal of " + p.In(seal.Num, "mm") + "; against " + p.In(pressure, "Pa") + " it needs " + text + "."
			f.Fixes = []lang.Fix{{Title: "Take a seal of " + text, Best: true, Edits: []lang.Edit{{Span: part.Stmt.Abs(seal.Field.Values[0].Expr.Span), NewText: text}}}}
			p.Report(part, *f)
		}
		for _, t := range p.Plant.ByKind("flue-trap") {
			judge(t, t.Label())
		}
		for _, u := range p.Plant.Units() {
			judge(u.Child("trap"), u.Label())
		}
	},
}

package rules

import (
	"strings"

	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleGasDropOverLimit)

var ruleGasDropOverLimit = check.Rule{
	ID: "gas-drop-over-limit", Group: check.Gas, Severity: lang.Error, Since: "0.1",
	Summary: "More gas pressure is lost between supply and the worst unit than is allowed.",
	Why:     "With all units firing the last one starves, burns badly and locks out.",
	Mend:    "take the offered pipe one or more sizes up",
	Sources: sources(cite.Source{Work: "BS 6891", Edition: "2015", Read: cite.Published, Note: "1 mbar natural gas, 2 mbar propane; US: NFPA 54 and IFGC, 0.5 in w.c."}),
	Run: func(p *check.Pass) {
		block := p.Plant.Block("gas-run")
		if block == nil {
			if len(p.Plant.Units()) > 0 {
				p.Unknown(nil, "a gas-run block")
			}
			return
		}
		id, ok := gasDropLimit(p.Plant)
		if !ok {
			p.Unknown(block, "jurisdiction, gas and supply pressure for which a limit is known")
			return
		}
		limit := p.Limit(id)
		f := p.AtMost(p.Results.Get(block, "pressure-loss", solve.AllFull), limit)
		if f == nil {
			return
		}
		worst := ""
		for _, in := range f.Quantity.Inputs {
			if in.Name == "worst unit" {
				worst = in.Text
			}
		}
		f.Message = "With all units at full fire " + p.In(f.Quantity.Num, limit.Unit) + " are lost up to " + worst + "; the limit is " + limit.Text() + "."
		f.Found = p.In(f.Quantity.Num, limit.Unit)
		if dear := dearestPipe(p, block); dear != nil {
			f.Span, f.File, f.Part = dear.Span(), dear.File, dear.Label()
			q := p.Results.Get(dear, "pressure-loss", solve.AllFull)
			f.Message = dear.Label() + " alone loses " + p.In(q.Num, limit.Unit) + " of the " + p.In(f.Quantity.Num, limit.Unit) + " lost up to " + worst + " with all units at full fire; the limit is " + limit.Text() + "."
			if u := p.Plant.Find(worst); u != nil {
				if at := p.Results.Get(u, "gas-pressure", solve.AllFull); at.Known() {
					f.Related = append(f.Related, lang.Related{Span: u.Span(), Message: worst + " is left with " + p.In(at.Num, limit.Unit)})
				}
			}
		}
		if fix, ok := cheapestUpsize(p, limit.Num); ok {
			f.Fixes = []lang.Fix{fix}
			f.Mend = strings.ToLower(fix.Title[:1]) + fix.Title[1:]
		}
		p.Report(block, *f)
	},
}

// gasDropLimit names the limit of the jurisdiction, gas and supply pressure.
func gasDropLimit(pl *plant.Plant) (id string, ok bool) {
	basis := pl.Block("basis")
	supply := basis.Child("supply").Get("pressure")
	fuel := basis.Child("gas").Get("fuel")
	if !supply.Known() || !fuel.Known() {
		return "", false
	}
	switch j := basis.Get("jurisdiction"); {
	case j.Is("US") && supply.Num < 8*249.08891: // under 8 in w.c.
		return "gas-drop-us-low", true
	case j.Is("US") && supply.Num < 11*249.08891:
		return "gas-drop-us-8", true
	case j.Is("US") && supply.Num < 10342.14: // under 1.5 psi
		return "gas-drop-us-11", true
	case j.Is("EU"):
		return "gas-drop-eu", true
	case j.Is("UK") && supply.Num <= 7500 && fuel.Is("natural"):
		return "gas-drop-natural-uk", true
	case j.Is("UK") && supply.Num <= 7500:
		return "gas-drop-propane-uk", true
	}
	return "", false
}

// dearestPipe is the pipe of the gas run that loses most.
func dearestPipe(p *check.Pass, block *plant.Part) *plant.Part {
	var best *plant.Part
	most := 0.0
	for _, kind := range [...]string{"pipe", "manifold", "drop"} {
		for _, part := range block.Children(kind) {
			if q := p.Results.Get(part, "pressure-loss", solve.AllFull); q.Known() && q.Num > most {
				best, most = part, q.Num
			}
		}
	}
	return best
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleLowWaterNotInterlocked)

var ruleLowWaterNotInterlocked = check.Rule{
	ID: "low-water-not-interlocked", Group: check.Electrical, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "A low-water or low-pressure cut-out does not stop the burners.",
	Why:     "The unit fires dry.",
	Mend:    "interlock the cut-out with the burners",
	Sources: sources(cite.Source{Work: "EN 12828 and BS 6644, cut-outs stop the burners", Read: cite.Memory}),
	Run: func(p *check.Pass) {
		if p.Plant.Block("controls") == nil {
			return
		}
		var linked plant.PartSet
		for _, i := range p.Plant.ByKind("interlock") {
			for _, s := range i.Subjects() {
				linked.Add(s.Part)
			}
		}
		for _, u := range p.Plant.Units() {
			if lw := u.Child("low-water"); lw != nil && !lw.First().Absent() && !linked.Has(lw) {
				if lw.Undecided() {
					p.Unknown(u, "whether "+u.Label()+" has a low-water cut-out")
					continue
				}
				p.Absent(u, "the interlock of the low-water cut-out of "+u.Label(), check.Finding{Span: lw.Span(), Message: "The low-water cut-out of " + u.Label() + " stops nothing."})
			}
		}
		if pr := p.Plant.Block("safety").Child("pressurisation"); pr != nil && !pr.First().Absent() && !linked.Has(pr) && !pr.Has("stops-firing") {
			if pr.Undecided() {
				p.Unknown(pr, "whether there is a pressurization unit that stops the burners")
				return
			}
			p.Absent(pr, "the interlock of the pressurization", check.Finding{Message: "The cut-outs of the pressurization unit stop nothing."})
		}
	},
}

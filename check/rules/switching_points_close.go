package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleSwitchingPointsClose)

var ruleSwitchingPointsClose = check.Rule{
	ID: "switching-points-close", Group: check.Capacity, Severity: lang.Warning, Since: "0.3",
	Summary: "The load at which a second unit joins is too near to that at which it leaves.",
	Why:     "The second unit brings the firing of both down to its own release: it comes and goes for hours.",
	Mend:    "bring the next unit on later, or release the last one earlier",
	Sources: sources(cite.Source{Work: "sequence control of several units", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		limit := p.Limit("switching-gap-least")
		f := p.AtLeast(p.Results.Get(p.Plant.UnitGroup(), "switching-gap", solve.Always), limit)
		if f == nil {
			return
		}
		controls := p.Plant.Block("controls")
		f.Message = "Between the loads at which the second unit joins and leaves lie " + f.Found + " of one unit's output; usual is at least " + limit.Text() + "."
		if f.Quantity.Num <= 0 {
			f.Message = "The second unit leaves at a load at which it has just joined: " + f.Found + " of one unit's output lie between; usual is at least " + limit.Text() + "."
		}
		release := controls.Child("release")
		f.Span, f.File, f.Part = release.Span(), release.File, "controls.release"
		f.Related = append(f.Related, lang.Related{Span: controls.Child("bring-on").Span(), Message: "the next unit is brought on here"})
		p.Report(release, *f)
	},
}

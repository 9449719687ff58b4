package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleReleaseNotReached)

var ruleReleaseNotReached = check.Rule{
	ID: "release-not-reached", Group: check.Capacity, Severity: lang.Warning, Since: "0.3",
	Summary: "The last unit is released at a firing below the least that the units can do.",
	Why:     "The firing never falls so far: at part load all units switch on and off together.",
	Mend:    "release the last unit above the least firing of the units",
	Sources: sources(cite.Source{Work: "least input against greatest input of the units", Read: cite.Published, Note: "data of the units"}),
	Run: func(p *check.Pass) {
		release := p.Plant.Block("controls").Child("release")
		v := release.Get("at")
		if v.Open() {
			p.Unknown(release, "the firing at which the last unit is released")
		}
		if !v.Known() {
			return
		}
		f := p.AtMost(p.Results.Group(p.Plant.UnitGroup(), "least-share", solve.Most, solve.Always), p.StatedLimit(v, "%", "release of the controls"))
		if f == nil {
			return
		}
		f.Message = "The last unit is released at " + p.In(v.Num, "%") + " of firing, but the units go down to " + f.Found + " only."
		f.Found, f.Limit = p.In(v.Num, "%"), "at least "+p.In(f.Quantity.Num, "%")
		f.Span, f.File, f.Part = v.Span(), v.File, "controls.release"
		p.Report(release, *f)
	},
}

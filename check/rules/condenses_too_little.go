package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleCondensesTooLittle)

var ruleCondensesTooLittle = check.Rule{
	ID: "condenses-too-little", Group: check.Capacity, Severity: lang.Warning, Since: "0.3",
	Summary: "Over the year the units condense for less than half of the heat.",
	Why:     "The units cost what condensing units cost and burn what others burn.",
	Mend:    "lower the design temperatures, or keep fewer circuits at one temperature",
	Limits:  "Asked where the load curve is stated and the flow follows the weather; the return is that of emitters at the flow of the design.",
	Sources: sources(cite.Source{Work: "heat of a year that condensing units give while they condense", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		group := p.Plant.UnitGroup()
		if group == nil || p.Plant.Block("basis").Child("load-curve") == nil || !p.Plant.Block("controls").Child("set-point").Has("weather-led") {
			return
		}
		for _, u := range p.Plant.Units() {
			if v := u.Child("kind").First(); v.Known() && !v.Is("condensing") {
				return
			}
		}
		limit := p.Limit("condensing-heat-least")
		q := p.Results.Get(group, "heat-condensing", solve.Always)
		if q == nil { // the curve itself could not be followed
			q = p.Results.Get(group, "year-heat", solve.Always)
			if !q.Known() && q != nil {
				p.Unknown(p.Plant.Block("basis").Child("load-curve"), q.Missing)
			}
			return
		}
		if p.Plant.Damaged("secondary") {
			p.Unknown(group, "a file that can be read whole, to look for the circuits")
			return
		}
		f := p.AtLeast(q, limit)
		if f == nil {
			return
		}
		f.Message = "The return is below the dew point for " + f.Found + " of the heat of a year; usual is at least " + limit.Text() + "."
		at := p.Plant.Block("basis").Child("primary")
		f.Span, f.File, f.Part = at.Span(), at.File, "basis.primary"
		p.Report(at, *f)
	},
}

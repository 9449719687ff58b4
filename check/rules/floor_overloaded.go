package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleFloorOverloaded)

var ruleFloorOverloaded = check.Rule{
	ID: "floor-overloaded", Group: check.Frame, Severity: lang.Error, Since: "0.3",
	Summary: "The filled plant loads the floor more than it allows.",
	Why:     "The floor cracks or gives way under the plant.",
	Mend:    "spread the load, and have the structure signed off",
	Sources: sources(cite.Source{Work: "load that the floor allows", Read: cite.Published, Note: "as the specification states it for the building"}),
	Run: func(p *check.Pass) {
		floor := p.Plant.Block("room").Child("floor")
		unit, force := "kN/m2", "kN"
		if p.Plant.US() {
			unit, force = "psf", "lbf"
		}
		if v := floor.Get("allows"); v.Known() {
			if f := p.AtMost(p.Results.Get(floor, "floor-load", solve.Always), p.StatedLimit(v, unit, "load that the floor allows")); f != nil {
				f.Message = "The filled plant loads the floor with " + f.Found + "; it allows " + p.In(v.Num, unit) + "."
				f.Span, f.File = v.Span(), v.File
				p.Report(floor, *f)
			}
		} else if v.Open() {
			p.Unknown(floor, "the load that the floor allows (allows)")
		}
		v := floor.Get("point-load")
		if !v.Known() {
			if v.Open() {
				p.Unknown(floor, "the load of one foot that the floor allows (point-load)")
			}
			return
		}
		for _, frame := range p.Plant.ByKind("frame") {
			if f := p.AtMost(p.Results.Group(frame, "foot-load", solve.Most, solve.Always), p.StatedLimit(v, force, "load of one foot that the floor allows")); f != nil {
				f.Message = "A foot of " + frame.Label() + " carries " + f.Found + "; the floor allows " + p.In(v.Num, force) + " on a point."
				f.Span, f.File = v.Span(), v.File
				p.Report(frame, *f)
			}
		}
	},
}

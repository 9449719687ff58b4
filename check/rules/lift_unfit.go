package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/stability"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleLiftUnfit)

var ruleLiftUnfit = check.Rule{
	ID: "lift-unfit", Group: check.Frame, Severity: lang.Warning, Since: "0.3",
	Summary: "The units are heavier than the stated means of lifting can take, or none are stated.",
	Why:     "A unit that slips while it is hung crushes hands and feet.",
	Mend:    "lift each unit with a hoist that carries it",
	Limits:  "Guide weights are a filter; the assessment of the task decides.",
	Sources: sources(stability.SourceLift, stability.SourceTeam, cite.Source{Work: "safe working load of the lifting gear", Read: cite.Published}),
	Run: func(p *check.Pass) {
		for _, f := range p.Plant.ByKind("frame") {
			switch heaviest, lack := heaviestOn(f); {
			case lack != "":
				p.Unknown(f, lack)
			case heaviest != nil:
				judgeLift(p, f, heaviest)
			}
		}
	},
}

// heaviestOn is the heaviest unit of a frame; lack says whose mass is missing.
func heaviestOn(f *plant.Part) (unit *plant.Part, lack string) {
	for _, row := range f.Children("row") {
		if row.Get("units").Open() {
			return nil, "the units of row " + row.Label()
		}
		for _, ref := range row.Refs("units") {
			m := ref.Part.Child("mass").Get("mass")
			if !m.Known() {
				return nil, "the mass of " + ref.Part.Label()
			}
			if unit == nil || m.Num > unit.Child("mass").Get("mass").Num {
				unit = ref.Part
			}
		}
	}
	return unit, ""
}

func judgeLift(p *check.Pass, f, unit *plant.Part) {
	mass := unit.Child("mass").Get("mass").Num
	one := p.Limit("lift-one-most")
	lifting := f.Child("lifting")
	means := lifting.Get("means")
	switch {
	case mass <= one.Num*(1+1e-9):
		return
	case lifting == nil:
		p.Absent(f, "how units are lifted", check.Finding{Part: unit.Label(), Source: one.Source, Message: unit.Label() + " weighs " + p.In(mass, "kg") + ", and nothing says how it is lifted."})
		return
	case !means.Known():
		p.Unknown(lifting, "how units are lifted")
		return
	case !means.Is("team"):
		v := lifting.Get("capacity")
		if !v.Known() {
			p.Unknown(lifting, "the safe working load of the "+means.Word)
			return
		}
		if mass > v.Num*(1+1e-9) {
			p.Report(lifting, check.Finding{
				Severity: lang.Error, Span: v.Span(), Part: unit.Label(), Found: p.In(mass, "kg"), Limit: "at most " + p.In(v.Num, "kg"), Source: cite.Source{Work: "safe working load of the lifting gear", Read: cite.Published},
				Message: unit.Label() + " weighs " + p.In(mass, "kg") + "; the " + means.Word + " carries " + p.In(v.Num, "kg") + ".",
			})
		}
		return
	}
	people := lifting.Get("people")
	if !people.Known() {
		p.Unknown(lifting, "how many people lift a unit (people)")
		return
	}
	most, err := stability.TeamLift(one.Num, int(people.Num+0.5))
	if err != nil {
		most, _ = stability.TeamLift(one.Num, 3) // more are in each other's way
	}
	if mass > most*(1+1e-9) {
		p.Report(lifting, check.Finding{
			Part: unit.Label(), Found: p.In(mass, "kg"), Limit: "at most " + p.In(most, "kg"), Source: stability.SourceTeam,
			Message: unit.Label() + " weighs " + p.In(mass, "kg") + "; the guide weight of the team is " + p.In(most, "kg") + ".",
		})
	}
}

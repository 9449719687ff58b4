package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleFrameNotLeveled)

var ruleFrameNotLeveled = check.Rule{
	ID: "frame-not-leveled", Group: check.Frame, Severity: lang.Warning, Since: "0.2",
	Summary: "Nothing says how the frame is set level and kept so.",
	Why:     "On a frame out of level headers do not vent, condensate stands and units lean on each other.",
	Mend:    "state the feet: feet 6 off adjustable locked",
	Sources: sources(cite.Source{Work: "setting of frames", Read: cite.Practice, Note: "within 2 mm by meter, feet locked"}),
	Run: func(p *check.Pass) {
		for _, f := range p.Plant.ByKind("frame") {
			feet := f.Child("feet")
			v := feet.First()
			switch {
			case feet == nil || v.Absent():
				p.Absent(plantOr(feet, f), "the feet of the frame", check.Finding{Part: f.Label(), Found: "no feet", Limit: "adjustable feet, locked", Message: "The feet of " + f.Label() + " are not stated."})
			case !v.Known():
				p.Unknown(feet, "the feet of "+f.Label())
			case !feet.Has("adjustable"):
				notLevel(p, f, feet, "cannot be set level", "the feet are not adjustable")
			case !feet.Has("locked"):
				notLevel(p, f, feet, "may come out of level", "the feet are not locked after leveling")
			}
		}
	},
}

func notLevel(p *check.Pass, f, feet *plant.Part, what, found string) {
	p.Report(feet, check.Finding{Part: f.Label(), Found: found, Limit: "adjustable feet, locked", Message: f.Label() + " " + what + ": " + found + "."})
}

func plantOr(a, b *plant.Part) *plant.Part {
	if a != nil {
		return a
	}
	return b
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleDamperMissing)

var ruleDamperMissing = check.Rule{
	ID: "damper-missing", Group: check.Flue, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "A unit on a shared flue has no non-return damper.",
	Why:     "The products of running units come back through a stopped one and into the room.",
	Mend:    "give each unit on the shared flue its own non-return damper",
	Sources: sources(cite.Source{Work: "EN 13384-2", Clause: "scope: units out of action are closed against back-flow", Read: cite.Published}),
	Run: func(p *check.Pass) {
		for _, fl := range p.Plant.ByKind("flue") {
			cons := fl.Children("connector")
			if len(cons) < 2 {
				continue
			}
			for _, c := range cons {
				ref, ok := c.Ref("from")
				if !ok || ref.Part.Kind != "unit" {
					continue
				}
				d := ref.Part.Child("damper")
				if d != nil && !d.First().Absent() {
					if d.Undecided() {
						p.Unknown(d, "whether "+ref.Part.Label()+" has a damper")
					}
					continue
				}
				f := check.Finding{Message: ref.Part.Label() + " has no non-return damper, but shares " + fl.Label() + " with " + counted(float64(len(cons)-1), "other unit") + "."}
				if q := p.Results.Get(ref.Part, "flue-back-pressure", solve.FanFailed); q.Known() && q.Num > 0 {
					f.Message += " When its fan fails, their products press on it with " + p.In(q.Num, "Pa") + "."
				}
				if d == nil {
					p.Absent(ref.Part, "the damper of "+ref.Part.Label(), f)
					continue
				}
				f.Span = d.Span()
				p.Report(ref.Part, f)
			}
		}
	},
}

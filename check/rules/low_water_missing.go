package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleLowWaterMissing)

var ruleLowWaterMissing = check.Rule{
	ID: "low-water-missing", Group: check.Pressure, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "A roof plant has no low-water or low-pressure cut-out.",
	Why:     "A roof plant empties first; its units then fire dry.",
	Mend:    "add a low-water cut-out that stops firing",
	Sources: sources(cite.Source{Work: "EN 12828", Edition: "2012+A1:2014", Read: cite.Published, Note: "extracts"}),
	Run: func(p *check.Pass) {
		room := p.Plant.Block("room").Child("kind")
		level := room.Get("level")
		if !level.Is("roof") && !level.Open() && !room.Undecided() {
			return
		}
		s := p.Plant.Block("safety")
		there, open := stands(s, "low-water")
		low := s.Child("pressurisation").Get("low")
		if there || low.Known() {
			return
		}
		for _, u := range p.Plant.Units() {
			own, maybe := stands(u, "low-water")
			switch {
			case own:
			case maybe || open || low.Open():
				p.Unknown(u, "whether "+u.Label()+" has a low-water cut-out")
			case !level.Known():
				p.Unknown(u, "whether the room is on the roof")
			default:
				p.Absent(u, "the low-water cut-out", check.Finding{Message: u.Label() + " stands on the roof and has no low-water cut-out."})
			}
		}
	},
}

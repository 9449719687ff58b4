package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleFlowUnproved)

var ruleFlowUnproved = check.Rule{
	ID: "flow-unproved", Group: check.Pressure, Severity: lang.Error, Device: true, Since: "0.2",
	Summary: "Nothing stops a burner when its water does not flow.",
	Why:     "The unit boils dry at full fire.",
	Mend:    "take a pump with flow proving, or interlock the pump with the burner",
	Sources: sources(cite.Source{Work: "interlock of burner and flow of units of low water content", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		var stops plant.PartSet
		for _, i := range p.Plant.ByKind("interlock") {
			for _, ref := range i.Subjects() {
				stops.Add(ref.Part)
			}
		}
		for _, u := range p.Plant.Units() {
			pump := u.Child("pump")
			if pump == nil || pump.First().Absent() || pump.Undecided() || pump.Has("flow-proving") || stops.Has(pump) {
				continue
			}
			low := u.Child("low-water")
			if low.Get("senses").Is("flow") {
				continue
			}
			if low.First().Open() || low.Get("senses").Open() {
				p.Unknown(u, "what the low-water cut-out of "+u.Label()+" senses")
				continue
			}
			p.Absent(pump, "the proof of flow of "+u.Label(), check.Finding{Message: "No proof of flow stops the burner of " + u.Label() + " when its pump fails."})
		}
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleVesselCanBeShutOff)

var ruleVesselCanBeShutOff = check.Rule{
	ID: "vessel-can-be-shut-off", Group: check.Pressure, Severity: lang.Warning, Since: "0.1",
	Summary: "An expansion vessel can be shut off by a plain valve.",
	Why:     "With the valve shut by mistake the safety valves lift at each firing.",
	Mend:    "use a lockable or cap valve, with a drain",
	Sources: sources(cite.Source{Work: "EN 12828", Edition: "2012+A1:2014", Read: cite.Published, Note: "extracts"}),
	Run: func(p *check.Pass) {
		for _, v := range p.Plant.ByKind("vessel") {
			w := v.Get("valve")
			if !w.Known() && !w.Absent() {
				p.Unknown(v, "what can shut "+v.Label()+" off")
			}
			if w.Is("plain-valve") {
				p.Report(v, check.Finding{Span: w.Span(), Found: "plain-valve", Limit: "lockable-valve or cap-valve", Message: v.Label() + " can be shut off by a plain valve.", Fixes: []lang.Fix{{Title: "Use a lockable valve", Best: true, Edits: []lang.Edit{{Span: w.Span(), NewText: "lockable-valve"}}}}})
			}
			if !v.Has("drain") && !w.Absent() && !v.Undecided() {
				p.Absent(v, "the drain", check.Finding{Message: v.Label() + " has no drain to check its precharge by."})
			}
		}
	},
}

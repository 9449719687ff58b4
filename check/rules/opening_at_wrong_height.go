package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleOpeningAtWrongHeight)

var ruleOpeningAtWrongHeight = check.Rule{
	ID: "opening-at-wrong-height", Group: check.Air, Severity: lang.Warning, Since: "0.3",
	Summary: "A ventilation opening lies too low or too high in the room for what it is to do.",
	Why:     "Air moves by the height between the openings; the heat stays under the ceiling.",
	Mend:    "move the opening",
	Limits:  "Asked of openings that state how far up they are.",
	Sources: sources(cite.Source{Work: "BS 6644 as quoted in trade literature", Read: cite.Practice, Note: "low openings within 1 m of the floor, high ones in the top 15 % of the height"}),
	Run: func(p *check.Pass) {
		unit := "m"
		if p.Plant.US() {
			return // the code counts 12 in from floor and ceiling to the edge, which is not stated
		}
		high := p.Plant.Block("room").Child("size").Get("high")
		for _, o := range p.Plant.ByKind("opening") {
			up := o.Get("up")
			if !up.Known() {
				if up.Open() {
					p.Unknown(o, "how far up "+o.Label()+" is")
				}
				continue
			}
			if nationOpen(p, o) {
				continue
			}
			switch level := o.Get("level"); {
			case level.Open():
				p.Unknown(o, "the level of "+o.Label())
			case level.Is("low-level"), level.Is("floor-level"):
				if limit := p.Limit("low-opening-height-most"); up.Num > limit.Num*(1+1e-9) {
					p.Report(o, check.Finding{Span: up.Span(), Found: p.In(up.Num, unit), Limit: "at most " + limit.Text(), Source: limit.Source, Message: o.Label() + " is a low opening " + p.In(up.Num, unit) + " up; low is up to " + limit.Text() + "."})
				}
			case level.Is("high-level") && !high.Known():
				p.Unknown(o, "the height of the room (size ... high)")
			case level.Is("high-level"):
				if limit := p.Limit("high-opening-share-least"); up.Num < high.Num*limit.Num*(1-1e-9) {
					least := p.In(high.Num*limit.Num, unit)
					p.Report(o, check.Finding{Span: up.Span(), Found: p.In(up.Num, unit), Limit: "at least " + least, Source: limit.Source, Message: o.Label() + " is a high opening " + p.In(up.Num, unit) + " up; in this room high is from " + least + "."})
				}
			}
		}
	},
}

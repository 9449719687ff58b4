package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleFanNotInterlocked)

var ruleFanNotInterlocked = check.Rule{
	ID: "fan-not-interlocked", Group: check.Air, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "A ventilation fan may fail without stopping the burners.",
	Why:     "The burners go on without air.",
	Mend:    "prove the flow of each fan and let its failure stop firing",
	Sources: sources(cite.Source{Work: "BS 6644", Read: cite.Practice, Note: "safety shut-down on failure of either fan, as quoted in trade literature"}),
	Run: func(p *check.Pass) {
		block := p.Plant.Block("air")
		for _, fan := range p.Plant.ByKind("fan") {
			if fan.Has("stops-firing") && fan.Has("proved") {
				continue
			}
			if fan.Undecided() {
				p.Unknown(fan, "what stops when "+fan.Label()+" fails")
				continue
			}
			linked := false
			for _, i := range p.Plant.ByKind("interlock") {
				for _, s := range i.Subjects() {
					linked = linked || s.Part == fan
				}
			}
			if linked {
				continue
			}
			end := fan.Stmt.HeadSpan().End
			add := ""
			for _, w := range [...]string{"proved", "stops-firing"} {
				if !fan.Has(w) {
					add += " " + w
				}
			}
			says := "Nothing stops the burners when " + fan.Label() + " fails."
			if fan.Has("stops-firing") {
				says = "The flow of " + fan.Label() + " is not proved, so its failure may go unseen and the burners go on."
			}
			if q := p.Results.Get(block, "air-left", solve.FanFailed); q.Known() && fan.Get("kind").Is("supply") {
				if q.Num < 0 {
					says += " With the largest supply fan failed " + p.In(-q.Num, q.Unit) + " more are extracted than come in."
				} else {
					says += " With the largest supply fan failed " + p.In(q.Num, q.Unit) + " are left to them."
				}
			}
			p.Absent(fan, "the interlock of "+fan.Label(), check.Finding{Message: says, Fixes: []lang.Fix{{Title: "Write" + add, Edits: []lang.Edit{{Span: lang.Span{Start: end, End: end}, NewText: add}}}}})
		}
	},
}

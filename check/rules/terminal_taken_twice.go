package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleTerminalTakenTwice)

var ruleTerminalTakenTwice = check.Rule{
	ID: "terminal-taken-twice", Group: check.Electrical, Severity: lang.Error, Since: "0.1",
	Summary: "Two wires end at one terminal of the same part.",
	Why:     "One of them has no function, or both have the wrong one.",
	Mend:    "give each wire its own terminal",
	Sources: sources(cite.Source{Work: "one wire, one terminal", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		type end struct {
			part *plant.Part
			code string
		}
		seen := map[end]*plant.Part{}
		take := func(part, at *plant.Part, code plant.Value) {
			if !code.Known() || at == nil {
				return
			}
			k := end{at, code.Word}
			if first := seen[k]; first != nil {
				p.Report(part, check.Finding{Span: code.Span(), Message: "Terminal " + code.Word + " of " + at.Label() + " is taken twice.", Related: []lang.Related{{Span: first.Span(), Message: "taken first here"}}})
				return
			}
			seen[k] = part
		}
		for _, w := range p.Plant.ByKind("wire") {
			to := w.Refs("to")
			for _, r := range to {
				take(w, r.Part, w.Get("terminal"))
			}
			if n, code := len(w.Subjects()), w.Get("terminal"); n > 1 && len(to) == 1 && code.Known() {
				p.Report(w, check.Finding{Span: code.Span(), Found: counted(float64(n), "wire"), Limit: "1 wire", Message: "Terminal " + code.Word + " of " + to[0].Part.Label() + " takes " + counted(float64(n), "wire") + "."})
			}
		}
		for _, s := range p.Plant.ByKind("sensor") {
			r, _ := s.Ref("to")
			take(s, r.Part, s.Get("terminal"))
		}
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/flue"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleFlueClassForOutdoors)

var ruleFlueClassForOutdoors = check.Rule{
	ID: "flue-class-for-outdoors", Group: check.Flue, Severity: lang.Error, Since: "0.1",
	Summary: "A flue of a class for outdoors stands indoors under pressure.",
	Why:     "Classes P2 and H2 may leak more than a building may take in.",
	Mend:    "take class P1 or H1 indoors",
	Sources: sources(flue.SourceClasses),
	Run: func(p *check.Pass) {
		for _, part := range classedPieces(p.Plant) {
			class, ok := pressureClass(part)
			if !ok || !class.Outdoors || part.Has("outdoors") {
				continue
			}
			q := p.Results.Get(part, "pressure", solve.AllFull)
			if !q.Known() {
				p.Unknown(part, "the pressure in "+part.Label())
				continue
			}
			if q.Num <= 0 {
				continue
			}
			p.Report(part, check.Finding{
				Span: part.Get("class").Span(), Found: class.Name + " at " + p.In(q.Num, "Pa"), Limit: "index 1 indoors under pressure",
				Message: part.Label() + " is of class " + class.Name + ", which is for outdoors, and works indoors at " + p.In(q.Num, "Pa") + ".",
			})
		}
	},
}

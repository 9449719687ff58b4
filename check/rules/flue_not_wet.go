package rules

import (
	"strings"

	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleFlueNotWet)

var ruleFlueNotWet = check.Rule{
	ID: "flue-not-wet", Group: check.Flue, Severity: lang.Error, Since: "0.1",
	Summary: "A flue for dry running stands behind condensing units.",
	Why:     "Condensate eats a dry flue and leaks through its joints.",
	Mend:    "take a flue of class W",
	Sources: sources(cite.Source{Work: "EN 1443", Clause: "resistance to condensate, W and D", Read: cite.Published}),
	Run: func(p *check.Pass) {
		condensing, known := false, len(p.Plant.Units()) > 0
		for _, u := range p.Plant.Units() {
			v := u.Child("kind").Get("condensing")
			condensing = condensing || v.Is("condensing")
			known = known && v.Known()
		}
		if known && !condensing {
			return
		}
		for _, part := range classedPieces(p.Plant) {
			for _, w := range strings.Split(part.Get("class").Word, "-") {
				if w != "D" {
					continue
				}
				if !condensing {
					p.Unknown(part, "whether the units condense")
					continue
				}
				p.Report(part, check.Finding{Span: part.Get("class").Span(), Found: "class D", Limit: "class W", Message: part.Label() + " is of class D, for dry running, but the units condense."})
			}
		}
	},
}

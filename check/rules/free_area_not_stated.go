package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/ventilation"
	"example.org/tundish/lang"
)

var _ = register(&ruleFreeAreaNotStated)

var ruleFreeAreaNotStated = check.Rule{
	ID: "free-area-not-stated", Group: check.Air, Severity: lang.Warning, Since: "0.1",
	Summary: "An opening states the size of its frame, not its free area.",
	Why:     "A louver gives about half of its face.",
	Mend:    "state the free area",
	Sources: sources(ventilation.SourceLouverUK),
	Run: func(p *check.Pass) {
		us := p.Plant.US()
		for _, o := range p.Plant.ByKind("opening") {
			if us && o.Get("made-of").Known() {
				continue // the code counts such a louver by its face and material
			}
			if us && o.Get("made-of").Open() {
				p.Unknown(o, "what "+o.Label()+" is made of")
				continue
			}
			if g := o.Get("gross"); g.Known() && !o.Get("free").Known() {
				if o.Get("free").Open() {
					p.Unknown(o, "the free area of "+o.Label())
					continue
				}
				if nationOpen(p, o) {
					continue
				}
				p.Report(o, check.Finding{Span: g.Span(), Found: p.In(g.Num, "cm2") + " gross", Limit: "a free area", Message: o.Label() + " states " + p.In(g.Num, "cm2") + " of frame, but not its free area; a louver gives about half."})
			}
		}
	},
}

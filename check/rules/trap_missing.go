package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleTrapMissing)

var ruleTrapMissing = check.Rule{
	ID: "trap-missing", Group: check.Condensate, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "A condensing unit has no trap of its own.",
	Why:     "Products leave through its condensate pipe.",
	Mend:    "give each unit its own trap",
	Sources: sources(cite.Source{Work: "a condensate outlet under flue pressure needs a water seal", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		for _, u := range p.Plant.Units() {
			kind, t := u.Child("kind").Get("condensing"), u.Child("trap")
			switch {
			case kind.Is("non-condensing"):
			case !kind.Known() && (t == nil || t.First().Absent()):
				p.Unknown(u, "whether "+u.Label()+" condenses (kind)")
			case t == nil && p.Plant.Block("condensate") == nil:
				p.Unknown(nil, "a condensate block") // the condensate is not dealt with yet
				return
			case t == nil:
				p.Absent(u, "the trap of "+u.Label(), check.Finding{Message: u.Label() + " has no condensate trap."})
			case t.First().Absent():
				p.Report(u, check.Finding{Span: t.Span(), Message: u.Label() + " has no condensate trap."})
			case t.Undecided():
				p.Unknown(t, "whether "+u.Label()+" has a trap")
			}
		}
	},
}

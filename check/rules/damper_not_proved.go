package rules

import (
	"strings"

	"example.org/tundish/check"
	"example.org/tundish/lang"
)

var _ = register(&ruleDamperNotProved)

var ruleDamperNotProved = check.Rule{
	ID: "damper-not-proved", Group: check.Record, Severity: lang.Error, Device: true, Since: "0.2",
	Summary: "A damper on a shared flue was not proved.",
	Why:     "Products of the other units enter a stopped unit and the room.",
	Mend:    "see the damper close when its unit stops, or mend it",
	Sources: sources(sourceExamine),
	Run: func(p *check.Pass) {
		for _, c := range commissioned(p.Plant) {
			d := c.unit.Child("damper")
			if d == nil || d.First().Absent() {
				continue
			}
			v := c.part.Child("damper").Get("proved")
			switch {
			case v.Is("closes-when-stopped"):
			case d.Undecided():
				p.Unknown(c.part, "whether "+c.unit.Label()+" has a damper")
			case v.Open():
				p.Unknown(c.part, "whether the damper of "+c.unit.Label()+" closes when it stops")
			case !v.Known():
				p.Absent(c.part, "the proof of its damper", check.Finding{Part: c.unit.Label(), Message: "The damper of " + c.unit.Label() + " was not proved."})
			default:
				p.Report(c.part, check.Finding{Part: c.unit.Label(), Span: v.Span(), Found: v.Word, Limit: "closes-when-stopped", Message: "The damper of " + c.unit.Label() + " was found: " + strings.ReplaceAll(v.Word, "-", " ") + "."})
			}
		}
	},
}

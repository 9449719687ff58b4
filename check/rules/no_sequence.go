package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleNoSequence)

var ruleNoSequence = check.Rule{
	ID: "no-sequence", Group: check.Capacity, Severity: lang.Warning, Since: "0.1",
	Summary: "Several units have no stated lead change or switching point.",
	Why:     "One unit does all the work, and the others fail when they are needed.",
	Mend:    "state lead and bring-on in the controls",
	Sources: sources(cite.Source{Work: "sequence control of several units", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		if len(p.Plant.Units()) < 2 {
			return
		}
		c := p.Plant.Block("controls")
		if c == nil {
			p.Unknown(nil, "a controls block")
			return
		}
		for _, word := range [...]string{"lead", "bring-on"} {
			if s := c.Child(word); s.First().Open() {
				p.Unknown(s, "a value of "+word)
			}
		}
		if c.Child("lead") == nil {
			p.Absent(c, "the lead change", check.Finding{Message: "Nothing says how the lead among the units changes."})
		}
		if c.Child("bring-on") == nil {
			p.Absent(c, "the switching point", check.Finding{Message: "Nothing says when the next unit is brought on."})
		}
	},
}

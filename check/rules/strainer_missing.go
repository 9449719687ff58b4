package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleStrainerMissing)

var ruleStrainerMissing = check.Rule{
	ID: "strainer-missing", Group: check.Water, Severity: lang.Warning, Since: "0.3",
	Summary: "Nothing catches dirt before the units.",
	Why:     "Rust and weld beads settle in the narrow passages of the units.",
	Mend:    "set a strainer or filter into the common return, or one before each unit",
	Sources: sources(cite.Source{Work: "EN 12828, as in extracts", Clause: "strainer in the common return", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		headers := p.Plant.Block("headers")
		if headers == nil {
			return
		}
		perhaps := false
		for _, block := range [...]*plant.Part{headers, p.Plant.Block("separation")} {
			there, open := stands(block, "strainer", "filter")
			if there {
				return
			}
			perhaps = perhaps || open
		}
		for _, u := range p.Plant.Units() {
			switch there, open := stands(u, "strainer"); {
			case !there && perhaps:
				p.Unknown(headers, "whether a strainer or filter stands in the common return")
				return
			case open:
				p.Unknown(u, "the strainer of "+u.Label())
			case !there:
				p.Absent(headers, "a strainer", check.Finding{Message: "No strainer or filter stands before " + u.Label() + ", nor in the common return."})
				return
			}
		}
	},
}

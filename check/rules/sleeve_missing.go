package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(check.Rule{
	ID: "sleeve-missing", Group: check.Gas, Severity: lang.Warning, Since: "0.1",
	Summary: "A gas pipe crosses a wall or floor without a sleeve.",
	Why:     "A leak in the wall spreads unseen, and movement shears the pipe.",
	Mend:    "add a sealed and vented sleeve for each crossing",
	Sources: sources(cite.Source{Work: "BS 6891 and IGEM/UP/2", Read: cite.Memory}),
	Run: func(p *check.Pass) {
		for _, pipe := range p.Plant.Block("gas-run").Children("pipe") {
			cross := pipe.Get("crossings")
			if !cross.Known() || cross.Num <= 0 {
				continue
			}
			if s := pipe.Get("sleeves"); s.Known() && s.Num >= cross.Num {
				continue
			}
			p.Absent(pipe, "the sleeves of "+pipe.Label(), check.Finding{Found: lang.Num(pipe.Get("sleeves").Num, 3) + " sleeves", Limit: lang.Num(cross.Num, 3) + " sleeves", Message: pipe.Label() + " crosses " + lang.Num(cross.Num, 3) + " walls or floors with " + lang.Num(pipe.Get("sleeves").Num, 3) + " sleeves."})
		}
	},
})

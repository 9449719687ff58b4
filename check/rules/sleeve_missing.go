package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleSleeveMissing)

var ruleSleeveMissing = check.Rule{
	ID: "sleeve-missing", Group: check.Gas, Severity: lang.Warning, Since: "0.1",
	Summary: "A gas pipe crosses a wall or floor without a sleeve.",
	Why:     "A leak in the wall spreads unseen, and movement shears the pipe.",
	Mend:    "add a sealed and vented sleeve for each crossing",
	Sources: sources(cite.Source{Work: "BS 6891 and IGEM/UP/2", Read: cite.Memory}),
	Run: func(p *check.Pass) {
		for _, pipe := range p.Plant.Block("gas-run").Children("pipe") {
			cross := pipe.Get("crossings")
			if cross.Open() {
				p.Unknown(pipe, "how many walls and floors "+pipe.Label()+" crosses")
				continue
			}
			said := pipe.Get("sleeves")
			have, listed := said.Num, 0.0
			for _, s := range p.Plant.Block("gas-run").Children("sleeve") {
				if ref, ok := s.Ref("on"); ok && ref.Part == pipe {
					listed++
				}
			}
			have = max(have, listed)
			if have >= cross.Num {
				continue
			}
			if said.Open() {
				p.Unknown(pipe, "the sleeves of "+pipe.Label())
				continue
			}
			walls := "1 wall or floor"
			if cross.Num != 1 {
				walls = lang.Num(cross.Num, 3) + " walls or floors"
			}
			missing(p, pipe, "the sleeves of "+pipe.Label(), check.Finding{Found: counted(have, "sleeve"), Limit: "at least " + counted(cross.Num, "sleeve"), Message: pipe.Label() + " crosses " + walls + " with " + counted(have, "sleeve") + "."}, "sleeve")
		}
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var sourceFrame = cite.Source{Work: "sections of the frame as stated", Read: cite.Published}

var _ = register(&ruleRowLongerThanFrame)

var ruleRowLongerThanFrame = check.Rule{
	ID: "row-longer-than-frame", Group: check.Frame, Severity: lang.Error, Since: "0.2",
	Summary: "A row of units is longer than the frame that carries it.",
	Why:     "The last unit hangs beside the frame.",
	Mend:    "add a section, or put the units closer as far as their data allow",
	Sources: sources(sourceFrame),
	Run: func(p *check.Pass) {
		for _, f := range p.Plant.ByKind("frame") {
			for _, row := range f.Children("row") {
				arm := p.Results.Get(row, "arm-length", solve.Always)
				if arm == nil {
					continue
				}
				if !arm.Known() {
					p.Unknown(row, arm.Missing)
					continue
				}
				q := p.Results.Get(row, "taken-length", solve.Always)
				if g := p.AtMost(q, p.NumberLimit(arm.Num, lang.Length, "", sourceFrame)); g != nil {
					have, want := lang.Quantity(q.Num, lang.Length, system(p)), lang.Quantity(arm.Num, lang.Length, system(p))
					g.Found, g.Limit = have, "at most "+want
					g.Message = "The units of " + row.Label() + " take " + have + "; its part of " + f.Label() + " is " + want + " long."
					p.Report(row, *g)
				}
			}
		}
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleOutputMoreThanInput)

var ruleOutputMoreThanInput = check.Rule{
	ID: "output-more-than-input", Group: check.Capacity, Severity: lang.Error, Since: "0.1",
	Summary: "A unit gives more heat than its input can.",
	Why:     "Output and input are swapped, or one is gross and the other net.",
	Mend:    "check output, input and their basis",
	Sources: sources(cite.Source{Work: "definition of gross and net", Read: cite.Published, Note: "gross to net 1.11 natural gas, 1.09 propane"}),
	Run: func(p *check.Pass) {
		said := map[*plant.Part]bool{}
		for _, u := range p.Plant.Units() {
			in, ok := solve.NetInput(p.Plant, u.Child("input"))
			if !ok {
				if s := u.Child("input"); s.Undecided() {
					p.Unknown(s, "the heat input of "+u.Label())
				}
				continue
			}
			most := in * solve.GrossToNet(p.Plant)
			for _, s := range u.Children("output") {
				v := s.First()
				if !v.Known() || v.Num <= most*(1+1e-9) || said[s] {
					continue
				}
				said[s] = true
				p.Report(s, check.Finding{Part: u.Label(), Span: v.Span(), Found: p.In(v.Num, "kW"), Limit: "at most " + p.In(most, "kW"), Message: "An output of " + p.In(v.Num, "kW") + " is more than an input of " + p.In(in, "kW") + " net can give."})
			}
		}
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleSerialTwice)

var ruleSerialTwice = check.Rule{
	ID: "serial-twice", Group: check.Record, Severity: lang.Error, Since: "0.2",
	Summary: "Two units carry the same serial number.",
	Why:     "One of the two was not measured, or its number was misread.",
	Mend:    "read the plates again",
	Sources: sources(sourceRecord),
	Run: func(p *check.Pass) {
		first := map[string]*plant.Part{}
		for _, c := range commissioned(p.Plant) {
			v := c.part.Get("serial")
			if !v.Known() {
				continue
			}
			if was := first[v.Word]; was != nil && was != c.part {
				p.Report(c.part, check.Finding{Part: c.unit.Label(), Span: v.Span(), Found: v.Word, Message: "The serial number " + v.Word + " of " + c.unit.Label() + " stands already with another unit.", Related: []lang.Related{{Span: was.Get("serial").Span(), Message: "first here"}}})
				continue
			}
			first[v.Word] = c.part
		}
	},
}

package rules

import (
	"strings"

	"example.org/tundish/check"
	"example.org/tundish/lang"
)

var _ = register(&ruleSafetyChainUnproved)

var ruleSafetyChainUnproved = check.Rule{
	ID: "safety-chain-unproved", Group: check.Record, Severity: lang.Error, Since: "0.2",
	Summary: "A safety device of a unit was not tested.",
	Why:     "A device that nobody tried may never act.",
	Mend:    "test each device and record it",
	Sources: sources(sourceExamine),
	Run: func(p *check.Pass) {
		devices := map[string]string{"limiter": "limiter", "low-water": "low-water", "high-pressure": "high-pressure"}
		for _, c := range commissioned(p.Plant) {
			tested := map[string]bool{}
			for _, s := range c.part.Children("safety-chain") {
				for v := range s.List("proved") {
					tested[v.Word] = true
				}
			}
			var lacks []string
			for _, d := range [...]string{"limiter", "low-water", "high-pressure"} {
				if c.unit.Child(devices[d]) != nil && !tested[d] {
					lacks = append(lacks, d)
				}
			}
			if !tested["gas-valve"] {
				lacks = append(lacks, "gas-valve")
			}
			if len(lacks) > 0 {
				p.Absent(c.part, "the tests of its safety devices", check.Finding{Part: c.unit.Label(), Message: "Not tested at " + c.unit.Label() + ": " + strings.Join(lacks, ", ") + "."})
			}
		}
	},
}

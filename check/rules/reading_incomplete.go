package rules

import (
	"strings"

	"example.org/tundish/check"
	"example.org/tundish/lang"
)

var _ = register(&ruleReadingIncomplete)

var ruleReadingIncomplete = check.Rule{
	ID: "reading-incomplete", Group: check.Record, Severity: lang.Warning, Since: "0.2",
	Summary: "A unit was commissioned without its gas rate or pressure, flue temperature or water readings.",
	Why:     "Later nobody can tell a fault that was there from the start from one that grew.",
	Mend:    "measure it and enter it",
	Sources: sources(sourceRecord),
	Run: func(p *check.Pass) {
		for _, c := range commissioned(p.Plant) {
			for _, fire := range [...]string{"high-fire", "low-fire"} {
				r := c.part.Child(fire)
				if r == nil {
					continue // reading-missing speaks of it
				}
				lacks := unread(func(slot string) bool { return r.Get(slot).Known() }, "gas-rate", "gas rate", "inlet", "working gas pressure", "flue", "flue temperature")
				if fire == "high-fire" && !r.Get("static").Known() {
					lacks = append(lacks, "gas pressure without flow")
				}
				if len(lacks) > 0 {
					rate := reading{full: fire == "high-fire"}
					p.Absent(r, "the readings", check.Finding{Part: c.unit.Label(), Message: "Not read on " + c.unit.Label() + " at " + rate.fire() + ": " + strings.Join(lacks, ", ") + "."})
				}
			}
			w := c.part.Child("water")
			at := w
			if at == nil {
				at = c.part
			}
			if lacks := unread(func(slot string) bool { return w.Get(slot).Known() }, "flow", "flow temperature", "return", "return temperature", "rate", "water flow"); len(lacks) > 0 {
				p.Absent(at, "the readings", check.Finding{Part: c.unit.Label(), Message: "Not read on the water side of " + c.unit.Label() + ": " + strings.Join(lacks, ", ") + "."})
			}
		}
	},
}

// unread lists the words of the slots that hold no value; pairs are slot and
// word in turn.
func unread(known func(string) bool, pairs ...string) []string {
	var out []string
	for i := 0; i+1 < len(pairs); i += 2 {
		if !known(pairs[i]) {
			out = append(out, pairs[i+1])
		}
	}
	return out
}

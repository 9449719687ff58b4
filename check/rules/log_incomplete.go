package rules

import (
	"strings"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleLogIncomplete)

var ruleLogIncomplete = check.Rule{
	ID: "log-incomplete", Group: check.Record, Severity: lang.Warning, Since: "0.2",
	Summary: "A yearly log lacks a unit, a rate, or a check that the design asks for each year.",
	Why:     "The part nobody looked at is the one that fails.",
	Mend:    "read and check what is missing, and log it",
	Sources: sources(sourceDesign),
	Run: func(p *check.Pass) {
		done := commissioned(p.Plant)
		for _, l := range p.Plant.ByKind("log") {
			read := map[*plant.Part][2]bool{}
			astray := false // a name that does not bind may be meant for what lacks
			for _, r := range l.Children("reading") {
				astray = astray || len(r.Subjects()) == 0
				for _, ref := range r.Subjects() {
					got := read[ref.Part]
					if r.Get("fire").Is("high-fire") {
						got[0] = true
					} else {
						got[1] = true
					}
					read[ref.Part] = got
				}
			}
			var lacks []string
			for _, c := range done {
				switch got := read[c.unit]; {
				case !got[0] && !got[1]:
					lacks = append(lacks, c.unit.Label())
				case !got[0]:
					lacks = append(lacks, c.unit.Label()+" at maximum rate")
				case !got[1]:
					lacks = append(lacks, c.unit.Label()+" at minimum rate")
				}
			}
			switch {
			case len(lacks) > 0 && astray:
				p.Unknown(l, "the right name of every unit that was read")
			case len(lacks) > 0:
				p.Absent(l, "the readings", check.Finding{Part: "log", Message: "The log of " + l.Get("date").Word + " has no reading of " + strings.Join(lacks, ", ") + "."})
			}
			if noDesign(p, l) {
				continue
			}
			checked := map[string]bool{}
			for _, k := range l.Children("checked") {
				for v := range k.List("checks") {
					checked[v.Word] = true
				}
			}
			lacks = nil
			for _, y := range p.Plant.Of.Block("handover").Children("yearly") {
				for v := range y.List("checks") {
					if v.Known() && !checked[v.Word] {
						lacks = append(lacks, v.Word)
					}
				}
			}
			if len(lacks) > 0 {
				p.Absent(l, "the yearly checks", check.Finding{Part: "log", Message: "Not checked in the log of " + l.Get("date").Word + ": " + strings.Join(lacks, ", ") + "."})
			}
		}
	},
}

package rules

import (
	"math"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(check.Rule{
	ID: "reading-drifts", Group: check.Record, Severity: lang.Warning, Since: "0.2",
	Summary: "A reading moved much since the commissioning.",
	Why:     "A burner or exchanger fouls, a gas pipe narrows or a regulator tires: next winter it fails.",
	Mend:    "find out what changed before it fails",
	Sources: sources(sourceRecord),
	Run: func(p *check.Pass) {
		type at struct {
			unit *plant.Part
			full bool
		}
		first := map[at]*plant.Part{}
		co2, inlet := p.Limit("co2-drift-most"), p.Limit("inlet-drift-most")
		for _, r := range readings(p.Plant) {
			k := at{r.unit, r.full}
			was := first[k]
			if r.owner.Kind != "log" {
				if was == nil {
					first[k] = r.part
				}
				continue
			}
			if was == nil {
				p.Unknown(r.part, "the commissioning readings of "+r.unit.Label()+" at "+r.fire())
				continue
			}
			say := func(name, unit string, most check.Limit) {
				a, b := was.Get(name), r.part.Get(name)
				if !a.Known() || !b.Known() || math.Abs(a.Num-b.Num) <= most.Num*(1+1e-9) {
					return
				}
				p.Report(r.part, check.Finding{Part: r.unit.Label(), Span: b.Span(), Found: lang.In(b.Num, unit), Limit: lang.In(a.Num, unit) + " within " + most.Text(), Source: most.Source, Message: "At " + r.fire() + " " + r.unit.Label() + " has " + lang.In(b.Num, unit) + " (" + name + "); at the commissioning it had " + lang.In(a.Num, unit) + ".", Related: []lang.Related{{Span: was.Span(), Message: "at the commissioning"}}})
			}
			say("co2", "%", co2)
			say("inlet", "mbar", inlet)
		}
	},
})

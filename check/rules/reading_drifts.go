package rules

import (
	"math"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleReadingDrifts)

var ruleReadingDrifts = check.Rule{
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
		first, last := map[at]*plant.Part{}, map[at]*plant.Part{}
		drifts := [...]struct {
			slot, word, unit string
			most             *check.Limit
			bad              int // +1: only a rise is bad, -1: only a fall, 0: both
		}{
			{"co2", "CO2", "%", p.Limit("co2-drift-most"), 0},
			{"inlet", "gas pressure", "mbar", p.Limit("inlet-drift-most"), -1},
			{"co", "CO", "ppm", p.Limit("drift-co-most"), 1},
			{"flue", "flue temperature", "degC", p.Limit("drift-flue-most"), 1},
		}
		for _, r := range readings(p.Plant) {
			if r.part.Get("fire").Open() {
				p.Unknown(r.part, "at which rate "+r.unit.Label()+" was read")
				continue
			}
			k := at{r.unit, r.full}
			if r.owner.Kind != "log" {
				if first[k] == nil {
					first[k], last[k] = r.part, r.part
				}
				continue
			}
			before := last[k]
			last[k] = r.part
			if before == nil {
				p.Unknown(r.part, "the commissioning readings of "+r.unit.Label()+" at "+r.fire())
				continue
			}
			for _, d := range drifts {
				now := r.part.Get(d.slot)
				if d.slot == "co" && ratioOver(p, r) {
					continue // co-ratio-high speaks, and more sharply
				}
				// The year before tells a sudden change, the commissioning a slow one.
				for _, was := range [...]*plant.Part{before, first[k]} {
					then := was.Get(d.slot)
					if !now.Known() || !then.Known() || !credible(p, was) || !credible(p, r.part) {
						continue
					}
					change := float64(d.bad) * (now.Num - then.Num)
					if d.bad == 0 {
						change = math.Abs(now.Num - then.Num)
					}
					if change <= d.most.Num*(1+1e-9) {
						continue
					}
					when := "at the commissioning"
					if was.Owner.Kind == "log" {
						when = "on " + was.Owner.Get("date").Word
					}
					p.Report(r.part, check.Finding{
						Part: r.unit.Label(), Span: now.Span(), Found: p.In(now.Num, d.unit), Limit: p.In(then.Num, d.unit) + " within " + d.most.Text(), Source: d.most.Source,
						Message: "At " + r.fire() + " the " + d.word + " of " + r.unit.Label() + " is " + p.In(now.Num, d.unit) + "; " + when + " it was " + p.In(then.Num, d.unit) + ".",
						Related: []lang.Related{{Span: was.Span(), Message: when}},
					})
					break
				}
			}
		}
	},
}

// credible tells readings that can be; of others reading-impossible speaks, and
// no drift is drawn from them.
func credible(p *check.Pass, part *plant.Part) bool {
	co2, flue, air := part.Get("co2"), part.Get("flue"), part.Get("air")
	most, known := mostCO2(p)
	return !(co2.Known() && (co2.Num <= 0 || known && co2.Num > most.Num)) && !(flue.Known() && air.Known() && flue.Num <= air.Num)
}

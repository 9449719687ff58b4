package rules

import (
	"math"

	"example.org/tundish/check"
	"example.org/tundish/check/calc/combustion"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleReadingImpossible)

var ruleReadingImpossible = check.Rule{
	ID: "reading-impossible", Group: check.Record, Severity: lang.Error, Since: "0.2",
	Summary: "A reading cannot be.",
	Why:     "A figure was misread or miswritten; what is judged by it is not judged.",
	Mend:    "read the instrument again",
	Sources: sources(sourceChemistry),
	Run: func(p *check.Pass) {
		for _, r := range readings(p.Plant) {
			most, known := mostCO2(p)
			say := func(v plant.Value, what, limit string) {
				p.Report(r.part, check.Finding{Part: r.unit.Label(), Span: v.Span(), Limit: limit, Message: r.unit.Label() + ", " + r.fire() + ": " + what + "."})
			}
			co2, o2, flue, air := r.part.Get("co2"), r.part.Get("o2"), r.part.Get("flue"), r.part.Get("air")
			if co2.Known() && co2.Num <= 0 {
				say(co2, "a CO2 of "+p.In(co2.Num, "%")+" cannot be; a flame makes carbon dioxide", "above 0 %")
			}
			possible := true
			switch {
			case co2.Known() && !known:
				p.Unknown(r.part, "the gas of the plant (gas in the basis)")
			case co2.Known() && co2.Num > most.Num*(1+1e-9):
				possible = false
				say(co2, "a CO2 of "+p.In(co2.Num, "%")+" cannot be; this gas gives at most "+most.Text()+" without any excess air", "at most "+most.Text())
			}
			if o2.Known() && (o2.Num > 0.2095 || o2.Num < 0) {
				say(o2, "an O2 of "+p.In(o2.Num, "%")+" cannot be; air has 20.95 %", "at most 20.95 %")
			}
			if fuel := fuelOf(p); co2.Known() && o2.Known() && possible && fuel != nil {
				want, err := combustion.O2(fuel, 100*min(co2.Num, fuel.MostCO2()/100))
				if gap := p.Limit("o2-gap-most"); err == nil && math.Abs(o2.Num-want/100) > gap.Num*(1+1e-9) {
					say(o2, "O2 of "+p.In(o2.Num, "%")+" and CO2 of "+p.In(co2.Num, "%")+" do not belong together; O2 would be "+lang.Num(want, 3)+" %", lang.Num(want, 3)+" % within "+gap.Text())
				}
			}
			if flue.Known() && air.Known() && flue.Num <= air.Num {
				say(flue, "products at "+p.In(flue.Num, "degC")+" are not hotter than the air at "+p.In(air.Num, "degC"), "above the air")
			}
			low, high := p.Limit("flue-reading-least"), p.Limit("flue-reading-most")
			if flue.Known() && (flue.Num < low.Num || flue.Num > high.Num*(1+1e-9)) {
				say(flue, "products at "+p.In(flue.Num, "degC")+" cannot be", low.Text()+" to "+high.Text())
			}
		}
	},
}

// fuelOf is the fuel of the plant that a record belongs to; nil where it is not
// stated.
func fuelOf(p *check.Pass) *combustion.Fuel {
	if p.Plant.Of == nil {
		return nil
	}
	switch fuel := p.Plant.Of.Block("basis").Child("gas").Get("fuel"); {
	case fuel.Is("natural"):
		return &combustion.Methane
	case fuel.Is("propane"):
		return &combustion.Propane
	}
	return nil
}

// mostCO2 is the CO2 that the plant's gas cannot exceed. Natural gases reach
// more than pure methane does.
func mostCO2(p *check.Pass) (*check.Limit, bool) {
	switch fuelOf(p) {
	case &combustion.Methane:
		return p.Limit("co2-possible-natural"), true
	case &combustion.Propane:
		return p.Limit("co2-possible-propane"), true
	}
	return nil, false
}

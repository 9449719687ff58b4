package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/ventilation"
	"example.org/tundish/lang"
)

var _ = register(&ruleDuctOpeningTooSmall)

var ruleDuctOpeningTooSmall = check.Rule{
	ID: "duct-opening-too-small", Group: check.Gas, Severity: lang.Warning, Since: "0.1",
	Summary: "The vents of a duct with a gas pipe are too small.",
	Why:     "A leak fills the duct.",
	Mend:    "enlarge the vents at top and bottom",
	Sources: sources(ventilation.SourceDuct),
	Run: func(p *check.Pass) {
		for _, d := range p.Plant.Block("gas-run").Children("duct") {
			area, open := d.Get("area"), d.Get("opening")
			need, err := ventilation.Duct(area.Num)
			have := "none"
			if open.Known() {
				have = p.In(open.Num, "m2")
			}
			switch {
			case !area.Known():
				p.Unknown(d, "the cross-section of the duct")
			case err != nil:
				p.Unknown(d, "a duct that the table covers: "+err.Error())
			case need == 0, open.Known() && open.Num >= need*(1-1e-9):
			case open.Open():
				p.Unknown(d, "the vents of the duct (opening)")
			default:
				p.Absent(d, "the vents of the duct", check.Finding{Found: have, Limit: "at least " + p.In(need, "m2"), Message: "The duct of " + p.In(area.Num, "m2") + " needs vents of " + p.In(need, "m2") + " at top and bottom; stated: " + have + "."})
			}
		}
	},
}

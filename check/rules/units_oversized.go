package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleUnitsOversized)

var ruleUnitsOversized = check.Rule{
	ID: "units-oversized", Group: check.Capacity, Severity: lang.Warning, Since: "0.1",
	Summary: "The units, without those in reserve, give much more than the load.",
	Why:     "Oversized plants cycle, wear and condense less.",
	Mend:    "take smaller or fewer units, or state the reason as a deviation",
	Sources: sources(cite.Source{Work: "Public heating course notes citing CIBSE Guide F", Clause: "boiler sizing, Guide F 10.1", Read: cite.Published}),
	Run: func(p *check.Pass) {
		group := p.Plant.UnitGroup()
		if group == nil {
			return
		}
		if reserveOpen(p.Plant) {
			p.Unknown(group, "how many units are in reserve (standby)")
			return
		}
		limit := p.Limit("installed-ratio-most")
		f := p.AtMost(p.Results.Get(group, "installed-ratio", solve.Always), limit)
		if f == nil {
			return
		}
		f.Message = "Without the units in reserve " + f.Found + " of the load is installed; usual is up to " + limit.Text() + "."
		p.Report(group, *f)
	},
}

// reserveOpen tells whether it is open, or cannot be read, how many units are in
// reserve. Silence means none.
func reserveOpen(pl *plant.Plant) bool {
	v := pl.Block("basis").Get("standby")
	return v.Open() || !v.Given && pl.Damaged("basis")
}

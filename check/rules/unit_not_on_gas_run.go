package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleUnitNotOnGasRun)

var ruleUnitNotOnGasRun = check.Rule{
	ID: "unit-not-on-gas-run", Group: check.Gas, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "A unit is not connected to the gas run.",
	Why:     "It has no gas, or gas that nobody sized.",
	Mend:    "connect it by a drop, or list it with the manifold",
	Sources: sources(cite.Source{Work: "a fired unit needs gas", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		block := p.Plant.Block("gas-run")
		if block == nil {
			if len(p.Plant.Units()) > 0 {
				p.Unknown(nil, "a gas-run block")
			}
			return
		}
		var on, fed plant.PartSet
		for _, kind := range [...]string{"pipe", "drop"} {
			for _, d := range block.Children(kind) {
				for _, r := range d.Refs("to") {
					on.Add(r.Part)
				}
			}
		}
		manifolds := block.Children("manifold")
		for _, m := range manifolds {
			for _, r := range m.Refs("feeds") {
				fed.Add(r.Part)
			}
		}
		for _, u := range p.Plant.Units() {
			switch {
			case !on.Has(u):
				missing(p, u, "the gas drop of "+u.Label(), check.Finding{Message: u.Label() + " is not connected to the gas run."}, "drop", "pipe")
			case len(manifolds) > 0 && !fed.Has(u):
				missing(p, u, u.Label()+" in the list of the manifold", check.Finding{Message: u.Label() + " has a drop, but no manifold lists it."}, "manifold")
			}
		}
	},
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&rulePumpShutIn)

var rulePumpShutIn = check.Rule{
	ID: "pump-shut-in", Group: check.Water, Severity: lang.Warning, Since: "0.3",
	Summary: "A pump of constant speed goes on while the valves of its circuits close.",
	Why:     "It heats the water it stands in, makes noise at the valves and wears.",
	Mend:    "give one circuit a bypass, or let the pump follow the pressure",
	Sources: sources(cite.Source{Work: "least flow of pumps", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		limit := p.Limit("pump-flow-least")
		for _, pump := range p.Plant.ByKind("plant-pump") {
			q := p.Results.Get(pump, "flow-left", solve.ValvesShut)
			speed := pump.Get("speed")
			if q == nil || q.Known() && q.Num >= limit.Num*(1-1e-9) || speed.Known() && !speed.Is("constant") {
				continue
			}
			if !speed.Known() {
				p.Unknown(pump, "whether "+pump.Label()+" runs at constant speed (speed)")
				continue
			}
			if f := p.AtLeast(q, limit); f != nil {
				f.Message = "With every valve shut that may close, " + f.Found + " of its flow are left to " + pump.Label() + ", which runs at constant speed; usual is at least " + limit.Text() + "."
				p.Report(pump, *f)
			}
		}
	},
}

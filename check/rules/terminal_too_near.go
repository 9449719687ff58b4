package rules

import (
	"strings"

	"example.org/tundish/check"
	"example.org/tundish/check/calc/flue"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleTerminalTooNear)

var ruleTerminalTooNear = check.Rule{
	ID: "terminal-too-near", Group: check.Flue, Severity: lang.Error, Since: "0.2",
	Summary: "A flue ends too near to an opening, a wall or the roof.",
	Why:     "Products come back into the building, or are pressed down onto people.",
	Mend:    "move the terminal",
	Limits:  "Fanned units up to 333 kW net together outside the US, where larger flues fall under the approval of the chimney height; mechanical draft and direct vent in the US.",
	Sources: sources(flue.SourceTerminalUP10, flue.SourceTerminalADJ, flue.SourceTerminalUS, flue.SourceTerminalUSDirect),
	Run: func(p *check.Pass) {
		for _, t := range p.Plant.ByKind("terminal") {
			if nationOpen(p, t) {
				continue
			}
			if q := p.Results.Get(t, "net-input", solve.Always); q != nil && !q.Known() {
				p.Unknown(t, q.Missing)
				continue
			}
			for i := range terminalDistances {
				judgeTerminal(p, t, &terminalDistances[i])
			}
		}
	},
}

// terminalDistance is one distance of a terminal.
type terminalDistance struct {
	slot, value, what string
	asked             bool // its absence is open work; of the others nothing stands there, as far as is stated
	sides             string
}

var terminalDistances = [...]terminalDistance{
	{"from-window", "least-from-window", "from an opening", true, "on which side of the opening %s ends: 4 ft are enough below and beside it, 1 ft above it"},
	{"from-intake", "least-from-intake", "from an air intake", true, "whether %s ends 3 ft above the air intake that lies within 10 ft"},
	{"from-facing", "least-from-facing", "from the wall it faces", false, ""},
	{"from-boundary", "least-from-boundary", "from the boundary", false, ""},
	{"from-terminal", "least-from-terminal", "from the next terminal", false, ""},
	{"from-meter", "least-from-meter", "from a meter or regulator", false, ""},
	{"above", "least-above", "above the roof", true, ""},
	{"above-ground", "least-above-ground", "above ground", true, ""},
	{"above-walkway", "least-above-walkway", "above a walkway", false, ""},
}

func judgeTerminal(p *check.Pass, t *plant.Part, d *terminalDistance) {
	need, have := p.Results.Get(t, d.value, solve.Always), t.Get(d.slot)
	if !need.Known() {
		return
	}
	if !have.Known() {
		if d.asked && !have.Absent() {
			p.Unknown(t, "the distance of "+t.Label()+" ("+d.slot+")")
		}
		return
	}
	if have.Num >= need.Num*(1-1e-9) {
		return
	}
	if least := p.Results.Group(t, d.value, solve.Least, solve.Always); least.Known() {
		if have.Num >= least.Num*(1-1e-9) {
			p.Unknown(t, strings.Replace(d.sides, "%s", t.Label(), 1))
			return
		}
		need = least
	}
	p.Report(t, check.Finding{
		Span: have.Span(), Found: p.In(have.Num, need.Unit), Limit: "at least " + p.In(need.Num, need.Unit), Quantity: need, Source: need.Formula.Source,
		Message: t.Label() + " ends " + p.In(have.Num, need.Unit) + " " + d.what + "; its units need " + p.In(need.Num, need.Unit) + ".",
	})
}

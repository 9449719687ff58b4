package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleClearanceTooSmall)

var ruleClearanceTooSmall = check.Rule{
	ID: "clearance-too-small", Group: check.Frame, Severity: lang.Error, Since: "0.3",
	Summary: "A unit has less free space than its data ask for.",
	Why:     "The unit cannot be opened, and is not serviced.",
	Mend:    "move the frame, or widen the pitch",
	Sources: sources(cite.Source{Work: "data of the unit", Read: cite.Published}),
	Run: func(p *check.Pass) {
		room, unit := p.Plant.Block("room"), "mm"
		if p.Plant.US() {
			unit = "in"
		}
		for _, row := range p.Plant.ByKind("row") {
			for _, ref := range row.Refs("units") {
				judge := clearance{p: p, unit: ref.Part, in: unit}
				for _, f := range room.Children("front") {
					if s := f.Subject(); s == row {
						judge.stated("front", "in front of", f.Get("clearance"))
					}
				}
				judge.stated("above", "above", room.Child("above").First())
				if q := p.Results.Get(row, "side-gap", solve.Always); q.Known() {
					judge.gap(row, q)
				}
			}
		}
	},
}

// clearance judges the space around one unit.
type clearance struct {
	p    *check.Pass
	unit *plant.Part
	in   string
}

// stated judges a distance of the room; what the unit does not ask for is free, and
// one that is not stated is not asked for
// here, one that is open is open work.
func (c *clearance) stated(slot, where string, have plant.Value) {
	need := c.unit.Child("clearance").Get(slot)
	switch {
	case !need.Known():
	case have.Open():
		c.p.Unknown(c.unit, "the free space "+where+" "+c.unit.Label())
	case have.Known() && have.Num < need.Num*(1-1e-9):
		c.p.Report(c.unit, check.Finding{
			Span: have.Span(), File: have.File, Found: lang.In(have.Num, c.in), Limit: "at least " + lang.In(need.Num, c.in),
			Message: lang.In(have.Num, c.in) + " are free " + where + " " + c.unit.Label() + "; it needs " + lang.In(need.Num, c.in) + ".",
		})
	}
}

// gap judges the space between two units, which serves both.
func (c *clearance) gap(row *plant.Part, q *solve.Quantity) {
	need := c.unit.Child("clearance").Get("side")
	if !need.Known() {
		return
	}
	if f := c.p.AtLeast(q, c.p.StatedLimit(need, c.in, "data of the unit")); f != nil {
		pitch := row.Owner.Child("pitch")
		f.Message = f.Found + " are left between " + c.unit.Label() + " and its neighbor; it needs " + lang.In(need.Num, c.in) + " at its sides."
		f.Part, f.Severity = c.unit.Label(), lang.Error
		f.Span, f.File = pitch.Span(), pitch.File
		c.p.Report(row, *f)
	}
}

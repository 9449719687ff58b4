package solve

import (
	"example.org/tundish/check/calc/ventilation"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// Formulas of the air values.
var (
	FormulaOpening   = Formula{Text: "A = (cm2/kW of the case + summer use + cooling) x net heat input", Source: ventilation.SourceBS6644}
	FormulaOpeningUS = Formula{Text: "A = gross heat input / n, in Btu/h by in2, of each of two openings: n 4000 straight to outside or by a vertical duct, 2000 by a horizontal duct, 1000 and at least 100 in2 to another room", Source: ventilation.SourceOpenings}
	FormulaSingleUS  = Formula{Text: "A = gross heat input / 3000 Btu/h by in2, of the only opening, high and straight to outside", Source: ventilation.SourceSingleOpening}
	FormulaFansUS    = Formula{Text: "supply = 0.35 ft3/min by 1000 Btu/h of gross heat input, what is extracted to be made up on top", Source: ventilation.SourceUSMechanical}
	FormulaFaceUS    = Formula{Text: "sum of the free areas of the openings at that level; of a louver of unknown make 75 % of the face in metal, 25 % in wood", Source: ventilation.SourceLouver}
	FormulaFans      = Formula{Text: "inlet = (2.6 + summer) m3/h by kW net, extract = inlet - 1.35 m3/h by kW net", Source: ventilation.SourceBS6644}
	FormulaFanLost   = Formula{Text: "supply - largest supply fan - extract", Source: ventilation.SourceBS6644}
	FormulaOpened    = Formula{Text: "sum of the free areas of the openings at that level", Source: ventilation.SourceBS6644}
)

const (
	btuHour         = 1055.05585262 / 3600
	squareInch      = 0.0254 * 0.0254
	cubicFootMinute = 0.3048 * 0.3048 * 0.3048 / 60
)

// solveAir computes the openings and fans that the room needs, and what it has.
func solveAir(c *Context) {
	block := c.P.Block("air")
	if block == nil {
		return
	}
	heat, missing := netInputOfAll(c.P)
	fanned := len(block.Children("fan")) > 0
	if missing != "" {
		needs := [...]string{"needed-area-high", "needed-area-low"}
		if fanned {
			needs = [...]string{"needed-supply", "needed-air-left"}
		}
		for _, name := range needs {
			c.Missing(block, name, Plain, Always, missing)
		}
		return
	}
	if fanned {
		fans(c, block, heat)
	} else {
		openings(c, block, heat)
	}
	stated(c, block)
}

// airLevels are the levels of openings that the needs are computed for.
var airLevels = [...]struct{ level, needed, free string }{
	{"high-level", "needed-area-high", "free-area-high"},
	{"low-level", "needed-area-low", "free-area-low"},
}

// levelOf is the level of an opening; an opening at the floor counts as low.
func levelOf(opening *plant.Part) string {
	if v := opening.Get("level"); !v.Is("floor-level") {
		return v.Word
	}
	return "low-level"
}

// stated sums the free area that the text states, by level. Under the US code a
// louver of unknown make counts by its face and material.
func stated(c *Context, block *plant.Part) {
	us := c.P.US()
	for _, l := range airLevels {
		sum, known, f := 0.0, true, &FormulaOpened
		for _, o := range block.Children("opening") {
			if levelOf(o) != l.level {
				continue
			}
			free, face := o.Get("free"), o.Get("gross")
			switch {
			case free.Known():
				sum += free.Num
			case us && face.Known() && o.Get("made-of").Known():
				k := ventilation.MetalLouver
				if o.Get("made-of").Is("wood") {
					k = ventilation.WoodLouver
				}
				area, err := ventilation.FreeArea(face.Num, k)
				sum, known, f = sum+area, known && err == nil, &FormulaFaceUS
			default:
				known = false
			}
		}
		if known {
			c.Add(Quantity{Part: block, Name: l.free, Num: sum, Dim: lang.Area, Unit: areaUnit(us), Formula: f})
		} else {
			c.Missing(block, l.free, Plain, Always, "the free area of every "+l.level+" opening")
		}
	}
}

// areaUnit prints areas of openings.
func areaUnit(us bool) string {
	if us {
		return "in2"
	}
	return "cm2"
}

// airCase tells how the units stand in their room; missing says what is lacking.
func airCase(c *Context, block *plant.Part) (k ventilation.Case, missing string) {
	kind := c.P.Block("room").Child("kind").Get("kind")
	if !kind.Known() {
		return 0, "the kind of room"
	}
	sealed := true
	intake := block.Child("intake").First()
	for _, u := range c.P.Units() {
		switch air := u.Child("kind").Get("air"); {
		case air.Is("open-flued"):
			sealed = false
		case air.Is("room-sealed"):
		case air.Is("room-sealed-or-open"):
			switch {
			case intake.Is("from-room"):
				sealed = false
			case !intake.Is("ducted"):
				return 0, "where the units take their air (intake)"
			}
		default:
			return 0, "whether " + u.Label() + " is room-sealed"
		}
	}
	switch {
	case kind.Is("plant-room") && sealed:
		return ventilation.RoomSealedInRoom, ""
	case kind.Is("plant-room"):
		return ventilation.OpenFluedInRoom, ""
	case sealed:
		return ventilation.RoomSealedInEnclosure, ""
	}
	return ventilation.OpenFluedInEnclosure, ""
}

func openings(c *Context, block *plant.Part, heat float64) {
	juris := c.P.Block("basis").Get("jurisdiction")
	if juris.Is("US") {
		openingsUS(c, block, heat*GrossToNet(c.P))
		return
	}
	need := func(high, low float64, f *Formula, in []Input) {
		c.Add(Quantity{Part: block, Name: "needed-area-high", Num: high, Dim: lang.Area, Unit: "cm2", Formula: f, Inputs: in})
		c.Add(Quantity{Part: block, Name: "needed-area-low", Num: low, Dim: lang.Area, Unit: "cm2", Formula: f, Inputs: in})
	}
	lack := func(what string) {
		c.Missing(block, "needed-area-high", Plain, Always, what)
		c.Missing(block, "needed-area-low", Plain, Always, what)
	}
	if !juris.Known() {
		lack("the jurisdiction")
		return
	}
	k, missing := airCase(c, block)
	if missing != "" {
		lack(missing)
		return
	}
	summer := 0.0
	if v := block.Child("summer-use").First(); v.Known() {
		summer = v.Num
	}
	a, err := ventilation.Natural(heat, k, summer)
	if err != nil {
		lack(err.Error())
		return
	}
	if v := block.Child("cooling").First(); v.Known() {
		more, _, err := ventilation.Cooler(heat, v.Num)
		if err != nil {
			lack(err.Error())
			return
		}
		a.High, a.Low = a.High+more, a.Low+more
	}
	need(a.High, a.Low, &FormulaOpening, c.Inputs(Input{Name: "net heat input", Num: heat, Dim: lang.Power}, Input{Name: "summer use", Num: summer, Dim: lang.Ratio, Unit: "%"}))
}

// SingleOpening tells a room whose only openings are high and straight to
// outside, which the US code allows.
func SingleOpening(block *plant.Part) bool {
	high := false
	for _, o := range block.Children("opening") {
		if levelOf(o) != "high-level" || o.Get("leads").Is("inside") || o.Get("kind").Is("duct") {
			return false
		}
		high = true
	}
	return high
}

// LeadsOpen is the first opening of which it is open where it leads or whether
// through a duct, both of which the US code counts by.
func LeadsOpen(block *plant.Part) *plant.Part {
	for _, o := range block.Children("opening") {
		if o.Get("leads").Open() || o.Get("kind").Open() {
			return o
		}
	}
	return nil
}

// openingsUS computes the openings by the gross heat input in W, each level by
// its own kind of opening. Units that draw their air through ducts of their own
// need none.
func openingsUS(c *Context, block *plant.Part, gross float64) {
	switch intake := block.Child("intake").First(); {
	case intake.Is("ducted"):
		return
	case intake.Open():
		c.Missing(block, "needed-area-high", Plain, Always, "where the units take their air from (intake)")
		c.Missing(block, "needed-area-low", Plain, Always, "where the units take their air from (intake)")
		return
	}
	if o := LeadsOpen(block); o != nil {
		for _, l := range airLevels {
			c.Missing(block, l.needed, Plain, Always, "where "+o.Label()+" leads, and whether through a duct")
		}
		return
	}
	input := Input{Name: "gross heat input", Num: gross, Dim: lang.Power}
	if SingleOpening(block) {
		if a, err := ventilation.OpeningArea(gross/btuHour, ventilation.Single); err == nil {
			c.Add(Quantity{Part: block, Name: "needed-area-high", Num: a * squareInch, Dim: lang.Area, Unit: "in2", Formula: &FormulaSingleUS, Inputs: c.Inputs(input)})
		}
		return
	}
	for _, l := range airLevels {
		kind, word := ventilation.Direct, "4000"
		for _, o := range block.Children("opening") {
			switch {
			case levelOf(o) != l.level:
			case o.Get("leads").Is("inside"):
				kind, word = ventilation.Transfer, "1000"
			case o.Get("kind").Is("duct") && kind != ventilation.Transfer:
				kind, word = ventilation.HorizontalDuct, "2000"
			}
		}
		a, err := ventilation.OpeningArea(gross/btuHour, kind)
		if err != nil {
			c.Missing(block, l.needed, Plain, Always, err.Error())
			continue
		}
		c.Add(Quantity{Part: block, Name: l.needed, Num: a * squareInch, Dim: lang.Area, Unit: "in2", Formula: &FormulaOpeningUS, Inputs: c.Inputs(input, Input{Name: "n", Text: word + " Btu/h by in2"})})
	}
}

func fans(c *Context, block *plant.Part, heat float64) {
	formula, unit := &FormulaFans, "m3/h"
	var f ventilation.Flows
	var in []Input
	var err error
	if c.P.US() {
		formula, unit = &FormulaFansUS, "cfm"
		gross := heat * GrossToNet(c.P)
		f.Inlet, err = ventilation.USMechanical(gross / btuHour)
		f.Inlet *= cubicFootMinute
		in = c.Inputs(Input{Name: "gross heat input", Num: gross, Dim: lang.Power})
	} else {
		summer := 0.0
		if v := block.Child("summer-use").First(); v.Known() {
			summer = v.Num
		}
		f, err = ventilation.Mechanical(heat, false, summer)
		in = c.Inputs(Input{Name: "net heat input", Num: heat, Dim: lang.Power}, Input{Name: "summer use", Num: summer, Dim: lang.Ratio, Unit: "%"})
	}
	if err != nil {
		c.Missing(block, "needed-supply", Plain, Always, err.Error())
		c.Missing(block, "needed-air-left", Plain, Always, err.Error())
		return
	}
	c.Add(Quantity{Part: block, Name: "needed-supply", Num: f.Inlet, Dim: lang.VolumeFlow, Unit: unit, Formula: formula, Inputs: in})
	supply, extract, largest := 0.0, 0.0, 0.0
	for _, fan := range block.Children("fan") {
		v := fan.Get("flow")
		lack := ""
		switch {
		case fan.Get("kind").Open():
			lack = "which way " + fan.Label() + " moves air"
		case !v.Known():
			lack = "the flow of " + fan.Label()
		}
		if lack != "" {
			c.Missing(block, "supply", Plain, Always, lack)
			c.Missing(block, "needed-air-left", Plain, Always, lack) // nothing to hold it against
			return
		}
		if fan.Get("kind").Is("supply") {
			supply += v.Num
			largest = max(largest, v.Num)
		} else {
			extract += v.Num
		}
	}
	c.Add(Quantity{Part: block, Name: "supply", Num: supply, Dim: lang.VolumeFlow, Unit: unit, Formula: formula, Inputs: in})
	c.Add(Quantity{Part: block, Name: "extract", Num: extract, Dim: lang.VolumeFlow, Unit: unit, Formula: formula, Inputs: in})
	if supply > 0 { // the largest supply fan failed, extract going on
		lost := c.Inputs(Input{Name: "supply", Num: supply, Dim: lang.VolumeFlow, Unit: unit}, Input{Name: "largest", Num: largest, Dim: lang.VolumeFlow, Unit: unit}, Input{Name: "extract", Num: extract, Dim: lang.VolumeFlow, Unit: unit})
		c.Add(Quantity{Part: block, Name: "air-left", Case: FanFailed, Num: supply - largest - extract, Dim: lang.VolumeFlow, Unit: unit, Formula: &FormulaFanLost, Inputs: lost})
	}
	// What is left for the burners, and the least of it: in the UK 1.35 - 0.18 m3/h
	// by kW, in the US all that they need.
	c.Add(Quantity{Part: block, Name: "air-left", Num: supply - extract, Dim: lang.VolumeFlow, Unit: unit, Formula: formula, Inputs: in})
	c.Add(Quantity{Part: block, Name: "needed-air-left", Num: f.Inlet - f.MostExtract, Dim: lang.VolumeFlow, Unit: unit, Formula: formula, Inputs: in})
}

package solve

import (
	"example.org/tundish/check/calc/ventilation"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// Formulas of the air values.
var (
	FormulaOpening   = Formula{Text: "A = (cm2/kW of the case + summer use + cooling) x net heat input", Source: ventilation.SourceBS6644}
	FormulaOpeningUS = Formula{Text: "A = gross heat input / 4000 Btu/h by in2, each of two openings straight to outside", Source: ventilation.SourceOpenings}
	FormulaFans      = Formula{Text: "inlet = (2.6 + summer) m3/h by kW net, extract = inlet - 1.35 m3/h by kW net", Source: ventilation.SourceBS6644}
	FormulaFanLost   = Formula{Text: "supply - largest supply fan - extract", Source: ventilation.SourceBS6644}
	FormulaOpened    = Formula{Text: "sum of the free areas of the openings at that level", Source: ventilation.SourceBS6644}
)

const (
	btuHour    = 1055.05585262 / 3600
	squareInch = 0.0254 * 0.0254
)

// solveAir computes the openings and fans that the room needs, and what it has.
func solveAir(c *Context) {
	block := c.P.Block("air")
	if block == nil {
		return
	}
	heat, missing := netInputOfAll(c.P)
	if missing != "" {
		c.Missing(block, "needed-area-high", Plain, Always, missing)
		c.Missing(block, "needed-area-low", Plain, Always, missing)
		return
	}
	fanned := len(block.Children("fan")) > 0
	if fanned {
		fans(c, block, heat)
	} else {
		openings(c, block, heat)
	}
	stated(c, block)
}

// stated sums what the text states: free area by level, flow of the fans.
func stated(c *Context, block *plant.Part) {
	sum := map[string]float64{}
	known := map[string]bool{"high-level": true, "low-level": true}
	for _, o := range block.Children("opening") {
		level := o.Get("level").Word
		if level == "floor-level" {
			level = "low-level"
		}
		v := o.Get("free")
		if !v.Known() {
			known[level] = false
			continue
		}
		sum[level] += v.Num
	}
	for level, name := range map[string]string{"high-level": "free-area-high", "low-level": "free-area-low"} {
		if known[level] {
			c.Add(Quantity{Part: block, Name: name, Num: sum[level], Dim: lang.Area, Unit: "cm2", Formula: &FormulaOpened})
		} else {
			c.Missing(block, name, Plain, Always, "the free area of every "+level+" opening")
		}
	}
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
	need := func(high, low float64, f *Formula, in []Input) {
		c.Add(Quantity{Part: block, Name: "needed-area-high", Num: high, Dim: lang.Area, Unit: "cm2", Formula: f, Inputs: in})
		c.Add(Quantity{Part: block, Name: "needed-area-low", Num: low, Dim: lang.Area, Unit: "cm2", Formula: f, Inputs: in})
	}
	lack := func(what string) {
		c.Missing(block, "needed-area-high", Plain, Always, what)
		c.Missing(block, "needed-area-low", Plain, Always, what)
	}
	juris := c.P.Block("basis").Get("jurisdiction")
	if juris.Is("US") {
		gross := heat * GrossToNet(c.P)
		a, err := ventilation.OpeningArea(gross/btuHour, ventilation.Direct)
		if err != nil {
			lack(err.Error())
			return
		}
		a *= squareInch
		need(a, a, &FormulaOpeningUS, c.Inputs(Input{Name: "gross heat input", Num: gross, Dim: lang.Power}))
		return
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

func fans(c *Context, block *plant.Part, heat float64) {
	summer := 0.0
	if v := block.Child("summer-use").First(); v.Known() {
		summer = v.Num
	}
	f, err := ventilation.Mechanical(heat, false, summer)
	if err != nil {
		c.Missing(block, "needed-supply", Plain, Always, err.Error())
		return
	}
	in := c.Inputs(Input{Name: "net heat input", Num: heat, Dim: lang.Power}, Input{Name: "summer use", Num: summer, Dim: lang.Ratio, Unit: "%"})
	c.Add(Quantity{Part: block, Name: "needed-supply", Num: f.Inlet, Dim: lang.VolumeFlow, Unit: "m3/h", Formula: &FormulaFans, Inputs: in})
	supply, extract, largest := 0.0, 0.0, 0.0
	for _, fan := range block.Children("fan") {
		v := fan.Get("flow")
		if !v.Known() {
			c.Missing(block, "supply", Plain, Always, "the flow of "+fan.Label())
			return
		}
		if fan.Get("kind").Is("supply") {
			supply += v.Num
			largest = max(largest, v.Num)
		} else {
			extract += v.Num
		}
	}
	c.Add(Quantity{Part: block, Name: "supply", Num: supply, Dim: lang.VolumeFlow, Unit: "m3/h", Formula: &FormulaFans, Inputs: in})
	c.Add(Quantity{Part: block, Name: "extract", Num: extract, Dim: lang.VolumeFlow, Unit: "m3/h", Formula: &FormulaFans, Inputs: in})
	if supply > 0 { // the largest supply fan failed, extract going on
		lost := c.Inputs(Input{Name: "supply", Num: supply, Dim: lang.VolumeFlow, Unit: "m3/h"}, Input{Name: "largest", Num: largest, Dim: lang.VolumeFlow, Unit: "m3/h"}, Input{Name: "extract", Num: extract, Dim: lang.VolumeFlow, Unit: "m3/h"})
		c.Add(Quantity{Part: block, Name: "air-left", Case: FanFailed, Num: supply - largest - extract, Dim: lang.VolumeFlow, Unit: "m3/h", Formula: &FormulaFanLost, Inputs: lost})
	}
	// What is left for the burners, and the least of it: 1.35 - 0.18 m3/h by kW.
	c.Add(Quantity{Part: block, Name: "air-left", Num: supply - extract, Dim: lang.VolumeFlow, Unit: "m3/h", Formula: &FormulaFans, Inputs: in})
	c.Add(Quantity{Part: block, Name: "needed-air-left", Num: f.Inlet - f.MostExtract, Dim: lang.VolumeFlow, Unit: "m3/h", Formula: &FormulaFans, Inputs: in})
}

package solve

import (
	"strings"

	"example.org/tundish/check/calc/insulation"
	"example.org/tundish/check/calc/pipe"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// Formulas of the insulation.
var (
	FormulaHeatLoss     = Formula{Text: "q = (tp-ta)/(ln(D/d)/(2 pi k) + 1/(pi D h)), D = d + 2 s, 75 degC in the pipe, 15 degC around it, h = 10 W/m2K", Source: insulation.SourceHeatLoss}
	FormulaHeatLossMost = Formula{Text: "greatest loss by the outer diameter of the pipe", Source: insulation.SourceLimits}
	FormulaThickness    = Formula{Text: "the thickness at which the loss is the greatest allowed", Source: insulation.SourceHeatLoss}
	FormulaThicknessUS  = Formula{Text: "to 140 degF 1 in below a pipe of 1 1/2 in and 1 1/2 in from there; above 1 1/2 in and 2 in", Source: insulation.SourceUS}
)

// WarmPipes lists the pipes of the water side that give off heat, the first of
// each statement.
func WarmPipes(p *plant.Plant) []*plant.Part {
	var out []*plant.Part
	for _, block := range [...]string{"headers", "secondary"} {
		for _, part := range blockParts(p.Block(block)) {
			switch part.Row.Keyword {
			case "header", "branch", "pipe":
				if part.Index == 0 {
					out = append(out, part)
				}
			}
		}
	}
	return out
}

// Cover is the statement that insulates a part; nil when none does.
func Cover(p *plant.Plant, part *plant.Part) *plant.Part { return insulates(p, part, "cover") }

// Bare is the statement that leaves a part bare on purpose; nil when none does.
func Bare(p *plant.Plant, part *plant.Part) *plant.Part { return insulates(p, part, "bare") }

func insulates(p *plant.Plant, part *plant.Part, keyword string) *plant.Part {
	for _, s := range p.Block("insulation").Children(keyword) {
		for _, ref := range s.Subjects() {
			if ref.Part == part {
				return s
			}
		}
	}
	return nil
}

// solveInsulation computes the heat that the covered pipes lose and what they
// may.
func solveInsulation(c *Context) {
	if c.P.Block("insulation") == nil {
		return
	}
	us := c.P.US()
	for _, part := range WarmPipes(c.P) {
		cover := Cover(c.P, part)
		if cover == nil {
			continue
		}
		now := pipe.Find(part.Get("material").Word, part.Get("size").Num)
		thick, k := cover.Get("thickness"), cover.Get("conductivity")
		lack := ""
		switch {
		case now == nil:
			lack = "the material and size of " + part.Label()
		case !thick.Known():
			lack = "the thickness of its insulation"
		case !k.Known() && !us:
			lack = "the conductivity of its insulation"
		}
		if lack != "" {
			c.Missing(part, "insulation-needed", Plain, Always, lack)
			continue
		}
		size := Input{Name: "pipe", Text: now.Material + " " + now.Size}
		if us {
			inches := part.Get("size").Num / 0.0254
			hot, ok := circuitTemperatures(c.P, Primary)
			if !ok {
				c.Missing(part, "insulation-needed", Plain, Always, "the flow temperature")
				continue
			}
			t, err := insulation.USThickness(hot*1.8+32, inches)
			if err != nil {
				c.Missing(part, "insulation-needed", Plain, Always, "a pipe that the table covers: "+strings.TrimSuffix(err.Error(), "."))
				continue
			}
			c.Add(Quantity{Part: part, Name: "insulation-needed", Num: t * 0.0254, Dim: lang.Length, Unit: "in", Formula: &FormulaThicknessUS, Inputs: c.Inputs(size)})
			continue
		}
		p := insulation.Pipe{Outside: now.Outside, Conductivity: k.Num, Surface: insulation.Surface, Inside: insulation.LimitInside, Ambient: insulation.LimitAmbient}
		limit, err := insulation.LimitFor(now.Outside * 1000)
		if err != nil {
			c.Missing(part, "insulation-needed", Plain, Always, "a pipe that the table covers: "+strings.TrimSuffix(err.Error(), "."))
			continue
		}
		in := []Input{size, {Name: "s", Num: thick.Num, Dim: lang.Length, Unit: "mm"}, {Name: "k", Num: k.Num, Dim: lang.Conductivity, Unit: "W/mK"}}
		if q, err := p.Loss(thick.Num); err == nil {
			c.Add(Quantity{Part: part, Name: "heat-loss", Num: q, Dim: lang.HeatLossPerRun, Unit: "W/m", Formula: &FormulaHeatLoss, Inputs: c.Inputs(in...)})
		}
		c.Add(Quantity{Part: part, Name: "heat-loss-most", Num: limit, Dim: lang.HeatLossPerRun, Unit: "W/m", Formula: &FormulaHeatLossMost, Inputs: c.Inputs(size)})
		if t, err := p.Thickness(limit); err == nil {
			c.Add(Quantity{Part: part, Name: "insulation-needed", Num: t, Dim: lang.Length, Unit: "mm", Formula: &FormulaThickness, Inputs: c.Inputs(size, in[2])})
		}
	}
}

// blockParts are what stands in a block; nothing without one.
func blockParts(b *plant.Part) []*plant.Part {
	if b == nil {
		return nil
	}
	return b.Parts
}

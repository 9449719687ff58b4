package solve

import (
	"math"

	"example.org/tundish/check/calc/vessel"
	"example.org/tundish/check/calc/water"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// Formulas of the vessels.
var (
	FormulaExpansion    = Formula{Text: "Ve = e Vs, e = (0.31 + 3.9e-4 t^2 + 3.2 additive) %", Source: vessel.SourceExpansion}
	FormulaVessel       = Formula{Text: "Vmin = (Ve + Vwr) (pe+1)/(pe-p0), Vwr = 0.5 % of Vs and at least 3 l, pe = psv - 0.5 bar up to 5 bar, 0.9 psv above", Source: vessel.SourceEN12828}
	FormulaFillRange    = Formula{Text: "least fill = VN (p0+1)/(VN-Vwr) - 1; most = (pe+1)/(1 + Ve (pe+1)/(VN (p0+1))) - 1", Source: vessel.SourceEN12828}
	FormulaHotPressure  = Formula{Text: "p = VN (p0+1)/(VN (p0+1)/(fill+1) - Ve) - 1", Source: vessel.SourceBoyle}
	FormulaPrecharge    = Formula{Text: "p0 = static + 0.3 bar", Source: vessel.SourcePrecharge}
	FormulaVesselVolume = Formula{Text: "sum of the vessels of the circuit", Source: vessel.SourceEN12828}
	FormulaVesselUS     = Formula{Text: "Vt = Vs [(v2/v1 - 1) - 3 a dt]/(1 - P1/P2)", Source: vessel.SourceASHRAE}
)

// Circuit is one water circuit that is closed by itself.
type Circuit string

// The circuits of a plant. Behind a separator there is one circuit only.
const (
	Primary   Circuit = "primary"
	Secondary Circuit = "secondary"
)

// ReliefCircuit is the circuit that a safety valve stands in.
func ReliefCircuit(r *plant.Part) Circuit {
	if v := r.Get("circuit"); v.Known() {
		return Circuit(v.Word)
	}
	for _, ref := range r.Refs("on") {
		if ref.Part.Owner != nil && ref.Part.Owner.Kind == "secondary" || ref.Port == "secondary" {
			return Secondary
		}
	}
	return Primary
}

// LowestRelief is the lowest set pressure of the safety valves of a circuit in
// Pa; 0 when none is stated.
func LowestRelief(p *plant.Plant, c Circuit) float64 {
	set := 0.0
	take := func(r *plant.Part) {
		if v := r.Get("set-pressure"); v.Known() && (set == 0 || v.Num < set) {
			set = v.Num
		}
	}
	if c == Primary {
		for _, u := range p.Units() {
			take(u.Child("relief"))
		}
	}
	for _, r := range p.Block("safety").Children("relief") {
		if ReliefCircuit(r) == c {
			take(r)
		}
	}
	return set
}

// ofCircuit finds a stated fact of the safety block for a circuit.
func ofCircuit(safety *plant.Part, keyword string, c Circuit) plant.Value {
	for _, s := range safety.Children(keyword) {
		if v := s.Get("side"); v.Is(string(c)) || !v.Given && c == Primary {
			return s.First()
		}
	}
	return plant.Value{}
}

// circuitTemperatures are the hottest flow and the water content of a circuit.
func circuitTemperatures(p *plant.Plant, c Circuit) (hot float64, ok bool) {
	basis := p.Block("basis")
	if c == Primary {
		v := basis.Get("primary")
		return v.Num, v.Known()
	}
	if v := p.One("exchanger").Get("secondary"); v.Known() {
		return v.Num, true
	}
	v := basis.Get("secondary")
	return v.Num, v.Known()
}

func circuitContent(p *plant.Plant, c Circuit) plant.Value {
	if v := ofCircuit(p.Block("safety"), "content", c); v.Given {
		return v
	}
	if c == Secondary {
		return p.Block("secondary").Child("content").First()
	}
	return plant.Value{}
}

// additive is the share of antifreeze in a circuit.
func additive(p *plant.Plant, c Circuit) float64 {
	g := p.Block("separation").Child("glycol")
	v := g.Get("share")
	if side := g.Get("side"); !v.Known() || side.Known() && side.Word != "both" && side.Word != string(c) {
		return 0
	}
	return v.Num
}

// solveSafety computes vessels and pressures of each circuit, then the safety
// valves.
func solveSafety(c *Context) {
	safety := c.P.Block("safety")
	if safety != nil {
		for _, side := range [...]Circuit{Primary, Secondary} {
			var list []*plant.Part
			for _, v := range safety.Children("vessel") {
				if s := v.Get("side"); s.Is(string(side)) || !s.Given && side == Primary {
					list = append(list, v)
				}
			}
			if len(list) > 0 {
				solveVessels(c, safety, side, list)
			}
		}
	}
	solveReliefs(c, safety)
}

const (
	barPa = 1e5
	liter = 1e-3
)

// solveVessels computes what a circuit asks of its vessels. The values stand at
// the first of them, but for what each must keep by itself.
func solveVessels(c *Context, safety *plant.Part, side Circuit, list []*plant.Part) {
	at := list[0]
	volume, pressure := "l", "bar"
	us := c.P.US()
	if us {
		volume, pressure = "gal", "psi"
	}
	total, precharge := 0.0, plant.Value{}
	for _, v := range list {
		n := v.Get("volume")
		if !n.Known() {
			c.Missing(at, "installed-volume", Plain, Always, "the volume of "+v.Label())
			total = math.NaN()
			break
		}
		total += n.Num
		if p := v.Get("precharge"); !precharge.Known() || p.Known() && p.Num > precharge.Num {
			precharge = p
		}
	}
	if !math.IsNaN(total) {
		c.Add(Quantity{Part: at, Name: "installed-volume", Num: total, Dim: lang.Volume, Unit: volume, Formula: &FormulaVesselVolume})
	}
	// Each vessel of the circuit has a precharge of its own to keep.
	static := ofCircuit(safety, "static", side)
	for _, v := range list {
		if !static.Known() {
			c.Missing(v, "least-precharge", Plain, Always, "the static pressure of the "+string(side)+" circuit (static)")
			continue
		}
		c.Add(Quantity{
			Part: v, Name: "least-precharge", Num: static.Num + vessel.PrechargeMargin*barPa, Dim: lang.Pressure, Unit: pressure, Formula: &FormulaPrecharge,
			Inputs: c.Inputs(Input{Name: "static", Num: static.Num, Dim: lang.Pressure, Unit: pressure}),
		})
	}
	content, set := circuitContent(c.P, side), LowestRelief(c.P, side)
	hot, warm := circuitTemperatures(c.P, side)
	lack := ""
	switch {
	case !content.Known():
		lack = "the water content of the " + string(side) + " circuit (content)"
	case !warm:
		lack = "the flow temperature of the " + string(side) + " circuit"
	case !precharge.Known():
		lack = "the precharge of " + at.Label()
	case set == 0:
		lack = "the set pressure of a safety valve of the " + string(side) + " circuit"
	}
	if lack != "" {
		c.Missing(at, "needed-volume", Plain, Always, lack)
		return
	}
	e, err := vessel.Expansion(hot, additive(c.P, side))
	if err != nil {
		c.Missing(at, "needed-volume", Plain, Always, "a circuit that the method covers: "+err.Error())
		return
	}
	common := []Input{
		{Name: "Vs", Num: content.Num, Dim: lang.Volume, Unit: volume},
		{Name: "t", Num: hot, Dim: lang.Temperature},
		{Name: "p0", Num: precharge.Num, Dim: lang.Pressure, Unit: pressure},
		{Name: "psv", Num: set, Dim: lang.Pressure, Unit: pressure},
	}
	c.Add(Quantity{Part: at, Name: "expansion-volume", Num: e * content.Num, Dim: lang.Volume, Unit: volume, Formula: &FormulaExpansion, Inputs: c.Inputs(common[:2]...)})
	sys := vessel.System{Volume: content.Num / liter, Expansion: e, Precharge: precharge.Num / barPa, SafetyValve: set / barPa}
	end, err := vessel.EndPressure(set / barPa)
	if err != nil {
		c.Missing(at, "needed-volume", Plain, Always, "a circuit that the method covers: "+err.Error())
		return
	}
	c.Add(Quantity{Part: at, Name: "end-pressure", Num: end * barPa, Dim: lang.Pressure, Unit: pressure, Formula: &FormulaVessel, Inputs: c.Inputs(common[3])})
	c.Add(Quantity{Part: at, Name: "pressure-room", Num: end*barPa - precharge.Num, Dim: lang.Pressure, Unit: pressure, Formula: &FormulaVessel, Inputs: c.Inputs(common[2:]...)})
	if end <= sys.Precharge {
		return // the room speaks for itself: no vessel can serve
	}
	if us {
		usVessel(c, at, content.Num, hot, precharge.Num, set, common)
	} else {
		sized, err := sys.Size()
		if err != nil {
			c.Missing(at, "needed-volume", Plain, Always, "a circuit that the method covers: "+err.Error())
			return
		}
		c.Add(Quantity{Part: at, Name: "needed-volume", Num: sized.Least * liter, Dim: lang.Volume, Unit: volume, Formula: &FormulaVessel, Inputs: c.Inputs(append(common[:4:4], Input{Name: "Ve", Num: sized.Expands * liter, Dim: lang.Volume, Unit: volume}, Input{Name: "Vwr", Num: sized.Reserve * liter, Dim: lang.Volume, Unit: volume})...)})
	}
	if math.IsNaN(total) {
		return
	}
	at4 := append(common[:4:4], Input{Name: "VN", Num: total, Dim: lang.Volume, Unit: volume})
	if f, err := sys.Fill(total / liter); err == nil {
		c.Add(Quantity{Part: at, Name: "least-fill", Num: f.Least * barPa, Dim: lang.Pressure, Unit: pressure, Formula: &FormulaFillRange, Inputs: c.Inputs(at4...)})
		c.Add(Quantity{Part: at, Name: "most-fill", Num: f.Most * barPa, Dim: lang.Pressure, Unit: pressure, Formula: &FormulaFillRange, Inputs: c.Inputs(at4...)})
	}
	if fill := ofCircuit(safety, "fill", side); fill.Known() {
		if p, err := sys.HotPressure(total/liter, fill.Num/barPa); err == nil {
			c.Add(Quantity{Part: at, Name: "hot-pressure", Num: p * barPa, Dim: lang.Pressure, Unit: pressure, Formula: &FormulaHotPressure, Inputs: c.Inputs(append(at4, Input{Name: "fill", Num: fill.Num, Dim: lang.Pressure, Unit: pressure})...)})
		}
	}
}

// usVessel sizes a diaphragm tank by the US form: cold at 40 degF and the
// precharge, hot at the end pressure.
func usVessel(c *Context, at *plant.Part, content, hot, precharge, set float64, in []Input) {
	const (
		coldC      = 4.444
		psi        = 6894.757293168361
		atmosphere = 101325.0
		gallon     = 3.785411784e-3
		ft3lb      = 16.018463 // kg/m3 in a lb/ft3
	)
	end, err := vessel.EndPressure(set / barPa)
	if err != nil {
		c.Missing(at, "needed-volume", Plain, Always, "a circuit that the method covers: "+err.Error())
		return
	}
	cold, err1 := water.Density(coldC, 2e5)
	warm, err2 := water.Density(hot, 3e5)
	if err1 != nil || err2 != nil {
		c.Missing(at, "needed-volume", Plain, Always, "a flow temperature that water has")
		return
	}
	w := vessel.USWater{Gallons: content / gallon, ColdVolume: ft3lb / cold, HotVolume: ft3lb / warm, Rise: (hot - coldC) * 1.8, Linear: vessel.USSteel}
	v, err := vessel.USDiaphragm(w, (precharge+atmosphere)/psi, (end*barPa+atmosphere)/psi)
	if err != nil {
		c.Missing(at, "needed-volume", Plain, Always, "a circuit that the method covers: "+err.Error())
		return
	}
	c.Add(Quantity{Part: at, Name: "needed-volume", Num: v * gallon, Dim: lang.Volume, Unit: "gal", Formula: &FormulaVesselUS, Inputs: c.Inputs(append(in[:4:4], Input{Name: "a", Text: "steel, 6.5e-6 by degF"})...)})
}

package plot

import (
	"math"

	gonum "gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	vgdraw "gonum.org/v1/plot/vg/draw"

	"example.org/tundish/check"
	"example.org/tundish/check/draw"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
)

// Headers draws the flow through each unit beside its design flow, and the
// pressure between the headers at each unit, all units running.
func Headers(p *plant.Plant, r *solve.Results, _ *check.Report) ([]byte, error) {
	const what = "the headers"
	units := p.Units()
	if len(units) == 0 {
		return nil, &Missing{what, "units"}
	}
	var flow, design, across plotter.XYs
	var names []string
	var fu, pu string
	for i, u := range units {
		x := float64(i)
		q := r.Get(u, "flow", solve.AllFull)
		h := r.Get(u, "header-pressure", solve.AllFull)
		if !q.Known() {
			return nil, &Missing{what, lacking(q, u)}
		}
		if !h.Known() {
			return nil, &Missing{what, lacking(h, u)}
		}
		if fu == "" {
			fu, pu = draw.Unit(p, q), draw.Unit(p, h)
		}
		flow = append(flow, plotter.XY{X: x, Y: in(q.Num, fu)})
		across = append(across, plotter.XY{X: x, Y: in(h.Num, pu)})
		if d := r.Get(u, "design-flow", solve.AllFull); d.Known() {
			design = append(design, plotter.XY{X: x, Y: in(d.Num, fu)})
		} else if d := r.Get(u, "design-flow", solve.Always); d.Known() {
			design = append(design, plotter.XY{X: x, Y: in(d.Num, fu)})
		}
		names = append(names, u.Label())
	}
	a := panel("Flow through the units", "", "flow, "+fu)
	if err := marks(a, "solved, all units running", flow, blue, vgdraw.CircleGlyph{}); err != nil {
		return nil, err
	}
	if len(design) > 0 {
		if err := marks(a, "design", design, orange, cross{}); err != nil {
			return nil, err
		}
	}
	b := panel("Flow header over return header", "", "pressure difference, "+pu)
	if err := marks(b, "at the take-offs of the unit", across, blue, vgdraw.CircleGlyph{}); err != nil {
		return nil, err
	}
	nominal(a, names, append(append(plotter.XYs(nil), flow...), design...))
	nominal(b, names, across)
	return render(draw.Title("Headers", p), "Flow through each unit beside its design flow, and the pressure difference between the headers at each unit.", a, b)
}

// nominal names the places of the x axis and gives the y axis room from zero,
// so that small differences do not look large, and for the legend.
func nominal(p *gonum.Plot, names []string, all plotter.XYs) {
	p.NominalX(names...)
	p.X.Min, p.X.Max = -0.6, float64(len(names))-0.4
	low, top := 0.0, 0.0
	for _, q := range all {
		low, top = min(low, q.Y), max(top, q.Y)
	}
	span := max(top-low, 1e-9)
	p.Y.Min, p.Y.Max = low-span*0.05, top+span*0.35
	if low == 0 {
		p.Y.Min = 0
	}
	p.Legend.Top = true
}

// Pumps draws the pump of the unit with the least margin against its circuit.
// The circuit is a parabola through the head that it needs at the design flow,
// all units running.
func Pumps(p *plant.Plant, r *solve.Results, _ *check.Report) ([]byte, error) {
	const what = "the pumps"
	var u *plant.Part
	least := math.Inf(1)
	for _, v := range p.Units() {
		q := r.Get(v, "pump-margin", solve.AllFull)
		if !q.Known() {
			return nil, &Missing{what, lacking(q, v)}
		}
		if q.Num < least {
			u, least = v, q.Num
		}
	}
	if u == nil {
		return nil, &Missing{what, "units with pumps"}
	}
	need, design := r.Get(u, "needed-head", solve.AllFull), r.Get(u, "design-flow", solve.Always)
	flow, head := r.Get(u, "flow", solve.AllFull), r.Get(u, "pump-head", solve.AllFull)
	for _, q := range []*solve.Quantity{need, design, flow} {
		if !q.Known() {
			return nil, &Missing{what, lacking(q, u)}
		}
	}
	fu, hu := draw.Unit(p, flow), draw.Unit(p, need)
	n := 1.0
	pump := u.Child("pump")
	if v := pump.Get("setting"); v.Known() {
		n = v.Num
	}
	curve, last := pumpCurve(pump, n, fu, hu)
	if len(curve) < 2 || design.Num <= 0 {
		return nil, &Missing{what, "the head curve of the pump of " + u.Label()}
	}
	var system plotter.XYs
	reach := max(last, flow.Num, design.Num) * 1.05
	for k := range 61 {
		q := reach * float64(k) / 60
		h := need.Num * (q / design.Num) * (q / design.Num)
		system = append(system, plotter.XY{X: in(q, fu), Y: in(h, hu)})
	}
	a := panel("Pump of "+u.Label()+", the unit with the least margin", "flow, "+fu, "head, "+hu)
	top := 0.0
	for _, q := range curve {
		top = max(top, q.Y)
	}
	for len(system) > 2 && system[len(system)-1].Y > top*1.15 {
		system = system[:len(system)-1]
	}
	if err := line(a, "pump at its setting", curve, blue, 2.2, nil); err != nil {
		return nil, err
	}
	if err := line(a, "circuit, as the square of the flow through the design point", system, orange, 1.8, styles[1].dash); err != nil {
		return nil, err
	}
	if err := marks(a, "head needed at the design flow", plotter.XYs{{X: in(design.Num, fu), Y: in(need.Num, hu)}}, orange, cross{}); err != nil {
		return nil, err
	}
	if head.Known() {
		if err := marks(a, "solved network, all units running", plotter.XYs{{X: in(flow.Num, fu), Y: in(head.Num, hu)}}, blue, vgdraw.CircleGlyph{}); err != nil {
			return nil, err
		}
	}
	a.Legend.Top = true
	a.X.Min, a.Y.Min, a.Y.Max = 0, 0, top*1.55
	return render(draw.Title("Pump and circuit", p), "Head of the pump and head that its circuit needs, over the flow through the unit.", a)
}

// pumpCurve samples the stated points with parabolas between them, at a part n
// of full speed: flow with n, head with its square.
func pumpCurve(pump *plant.Part, n float64, fu, hu string) (pts plotter.XYs, last float64) {
	var flows, heads []float64
	for _, s := range pump.Child("head-curve").Children("point") {
		f, h := s.Get("flow"), s.Get("pressure")
		if f.Known() && h.Known() {
			flows, heads = append(flows, f.Num), append(heads, h.Num)
		}
	}
	for i := 1; i < len(flows); i++ {
		a, b := flows[i-1], flows[i]
		if b <= a {
			return nil, 0
		}
		for k := range 13 {
			q := a + (b-a)*float64(k)/12
			t := (q*q - a*a) / (b*b - a*a)
			pts = append(pts, plotter.XY{X: in(q*n, fu), Y: in((heads[i-1]+t*(heads[i]-heads[i-1]))*n*n, hu)})
		}
		last = b * n
	}
	return pts, last
}

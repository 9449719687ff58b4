package plot

import (
	"math"

	"gonum.org/v1/plot/plotter"
	vgdraw "gonum.org/v1/plot/vg/draw"

	"example.org/tundish/check"
	"example.org/tundish/check/draw"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
)

// gasWay is the pressure along the run to one unit.
type gasWay struct {
	unit *plant.Part
	pts  plotter.XYs // distance from the supply and pressure, in the units of the plot
}

// GasPressure draws the gas pressure along the run to each unit, and at each
// unit beside its limit, all units at full fire.
func GasPressure(p *plant.Plant, r *solve.Results, rep *check.Report) ([]byte, error) {
	const what = "the gas pressure"
	ways, unit, lack := gasWays(p, r)
	if lack != "" {
		return nil, &Missing{what, lack}
	}
	run := panel("Along the run", lengthUnit(p)+" from the supply", "gas pressure, "+unit)
	worst := 0
	for i := range ways {
		if end(ways[i].pts) < end(ways[worst].pts) {
			worst = i
		}
	}
	far, low, top := 0.0, math.Inf(1), 0.0
	for i := range ways {
		for _, q := range ways[i].pts {
			far, low, top = max(far, q.X), min(low, q.Y), max(top, q.Y)
		}
	}
	for i := range ways {
		if i == worst {
			continue
		}
		name := ""
		if i == (worst+1)%len(ways) {
			name = "to the other units"
		}
		if err := line(run, name, ways[i].pts, grey, 0.8, nil); err != nil {
			return nil, err
		}
	}
	if err := line(run, "to "+ways[worst].unit.Label()+", the least", ways[worst].pts, blue, 2.4, nil); err != nil {
		return nil, err
	}
	each := panel("At the units, all at full fire", "", "gas pressure, "+unit)
	var at plotter.XYs
	var names []string
	for i, w := range ways {
		at = append(at, plotter.XY{X: float64(i), Y: end(w.pts)})
		names = append(names, w.unit.Label())
	}
	if err := marks(each, "at the inlet of the unit", at, blue, vgdraw.CircleGlyph{}); err != nil {
		return nil, err
	}
	each.NominalX(names...)
	each.X.Min, each.X.Max = -0.6, float64(len(names))-0.4
	if l, ok := gasLimit(rep); ok {
		y := in(l, unit)
		low = min(low, y)
		if err := level(run, "least that the units allow", 0, far, y); err != nil {
			return nil, err
		}
		if err := level(each, "least that the units allow", each.X.Min, each.X.Max, y); err != nil {
			return nil, err
		}
	}
	pad := max((top-low)*0.08, 0.01)
	for _, q := range [...]*float64{&run.Y.Min, &each.Y.Min} {
		*q = low - pad
	}
	// The legend stands over the curves: room is kept for it.
	run.Y.Max, each.Y.Max = top+(top-low)*0.45+pad, top+(top-low)*0.45+pad
	run.Legend.Top, each.Legend.Top = true, true
	run.X.Min, run.X.Max = 0, far
	return render(draw.Title("Gas pressure", p), "Gas pressure along the run to each unit and at each unit, with the least that the units allow.", run, each)
}

func end(pts plotter.XYs) float64 { return pts[len(pts)-1].Y }

// gasLimit is the greatest of the units' least pressures.
func gasLimit(rep *check.Report) (limit float64, ok bool) {
	if rep == nil {
		return 0, false
	}
	for i := range rep.Comparisons {
		c := &rep.Comparisons[i]
		if c.AtLeast && c.Quantity.Name == "gas-pressure" && (!ok || c.Limit.Num > limit) {
			limit, ok = c.Limit.Num, true
		}
	}
	return limit, ok
}

// gasWays reads the ways from the results: the pressure at the start of each
// pipe is an input of its loss, the end of a way is the pressure at the unit.
func gasWays(p *plant.Plant, r *solve.Results) (ways []gasWay, unit, lack string) {
	run := p.Block("gas-run")
	switch {
	case run == nil:
		return nil, "", "a gas run"
	case len(p.Units()) == 0:
		return nil, "", "units"
	}
	main := run.Child("manifold")
	var common plotter.XYs
	dist := 0.0
	far := lengthUnit(p)
	point := func(x, y float64) plotter.XY { return plotter.XY{X: in(x, far), Y: in(y, unit)} }
	for _, part := range draw.GasRun(p) {
		if part.Kind != "pipe" {
			continue
		}
		q, p1, ok := inlet(r, part)
		if !ok {
			return nil, "", lacking(q, part)
		}
		if unit == "" {
			unit = draw.Unit(p, q)
		}
		common = append(common, point(dist, p1))
		dist += part.Get("length").Num
		common = append(common, point(dist, p1-q.Num))
	}
	for _, u := range p.Units() {
		q := r.Get(u, "gas-pressure", solve.AllFull)
		if !q.Known() {
			return nil, "", lacking(q, u)
		}
		if unit == "" {
			unit = draw.Unit(p, q)
		}
		pts := append(plotter.XYs(nil), common...)
		at := dist
		drop := draw.DropOf(p, u)
		if main != nil && drop != nil {
			if _, p1, ok := inlet(r, main); ok {
				pts = append(pts, point(dist, p1))
			}
			at += alongManifold(main, u)
		}
		if drop != nil {
			if _, p1, ok := inlet(r, drop); ok {
				pts = append(pts, point(at, p1))
			}
			at += drop.Get("length").Num
		}
		pts = append(pts, point(at, q.Num))
		ways = append(ways, gasWay{u, pts})
	}
	return ways, unit, ""
}

func lacking(q *solve.Quantity, part *plant.Part) string {
	if q != nil && q.Missing != "" {
		return q.Missing
	}
	return "a pressure that can be computed at " + part.Label()
}

// inlet is the pressure in Pa at the start of a pipe.
func inlet(r *solve.Results, part *plant.Part) (q *solve.Quantity, p1 float64, ok bool) {
	q = r.Get(part, "pressure-loss", solve.AllFull)
	if !q.Known() {
		return q, 0, false
	}
	for _, i := range q.Inputs {
		if i.Name == "p1" {
			return q, i.Num, true
		}
	}
	return q, 0, false
}

// alongManifold is the way in m from the start of the manifold to the take-off
// of a unit.
func alongManifold(main, unit *plant.Part) float64 {
	feeds := main.Refs("feeds")
	for k, f := range feeds {
		if f.Part != unit {
			continue
		}
		if v := main.Get("pitch"); v.Known() {
			return v.Num * float64(k)
		}
		if v := main.Get("length"); v.Known() && len(feeds) > 1 {
			return v.Num * float64(k) / float64(len(feeds)-1)
		}
	}
	return 0
}

package plot

import (
	"fmt"

	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"

	"example.org/tundish/check"
	"example.org/tundish/check/draw"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

// hoursOfYear ends the axis of the load duration.
const hoursOfYear = 8760

// LoadDuration draws the load over the hours of a year as the basis states it
// (load-curve), with the output of one unit, two units and so on; where the
// results hold them, the units that run at each hour and the least heat with the
// hours below it.
func LoadDuration(p *plant.Plant, r *solve.Results, _ *check.Report) ([]byte, error) {
	const what = "the load duration"
	basis := p.Block("basis")
	load := r.Get(basis, "load", solve.Always)
	if !load.Known() {
		return nil, &Missing{what, lacking(load, basis)}
	}
	curve, lack := solve.LoadCurve(p, load.Num)
	if lack != "" {
		return nil, &Missing{what, lack}
	}
	unit := draw.Unit(p, load)
	a := panel("Load over the hours of a year and units that run", "hours of the year with at least this load", "heat, "+unit)
	var points plotter.XYs
	for _, pt := range curve {
		points = append(points, plotter.XY{X: pt.Time / 3600, Y: in(pt.Load, unit)})
	}
	end := curve.Span() / 3600
	points = append(points, plotter.XY{X: end, Y: 0})
	if err := line(a, "load", points, blue, 2.4, nil); err != nil {
		return nil, err
	}
	sum := 0.0
	var sums []float64
	for k, u := range p.Units() {
		q := r.Get(u, "output", solve.Always)
		if !q.Known() {
			return nil, &Missing{what, lacking(q, u)}
		}
		sum += q.Num
		sums = append(sums, sum)
		name := ""
		if k == 0 {
			name = "output of one unit, two units, ..."
		}
		if err := line(a, name, plotter.XYs{{X: 0, Y: in(sum, unit)}, {X: hoursOfYear, Y: in(sum, unit)}}, grey, 0.7, []vg.Length{1, 2}); err != nil {
			return nil, err
		}
	}
	group := p.UnitGroup()
	if stairs := running(r, group, sums, unit); len(stairs) > 0 {
		mean := r.Group(group, "running-units", solve.Mean, solve.Always)
		if err := line(a, "output of the units that run, "+lang.Num(mean.Num, 3)+" in the mean", stairs, orange, 1.8, styles[1].dash); err != nil {
			return nil, err
		}
	}
	if q := r.Get(group, "least-heat", solve.Always); q.Known() {
		name := "least heat of one unit"
		if h := r.Get(group, "hours-below-least", solve.Always); h.Known() {
			name = fmt.Sprintf("least heat of one unit, below it %s h", lang.Num(h.Num/3600, 3))
		}
		if err := line(a, name, plotter.XYs{{X: 0, Y: in(q.Num, unit)}, {X: hoursOfYear, Y: in(q.Num, unit)}}, red, 1.2, styles[2].dash); err != nil {
			return nil, err
		}
	}
	a.X.Min, a.X.Max, a.Y.Min, a.Y.Max = 0, max(hoursOfYear, end), 0, in(max(sum, load.Num), unit)*1.45
	a.Legend.Top = true
	return render(draw.Title("Load duration", p), "The load over the hours of a year with the outputs of the units.", a)
}

// running is the output of the units that run, from the hour of the greatest load
// on; nothing where the results do not hold how many run.
func running(r *solve.Results, group *plant.Part, sums []float64, unit string) (stairs plotter.XYs) {
	at := 0.0
	for n := len(sums); n > 0; n-- {
		q := r.Get(group, solve.HoursWith(n), solve.Always)
		if !q.Known() {
			return nil
		}
		if q.Num <= 0 {
			continue
		}
		next := at + q.Num/3600
		stairs = append(stairs, plotter.XY{X: at, Y: in(sums[n-1], unit)}, plotter.XY{X: next, Y: in(sums[n-1], unit)})
		at = next
	}
	return stairs
}

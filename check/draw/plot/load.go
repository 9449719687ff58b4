package plot

import (
	"fmt"

	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"

	"example.org/tundish/check"
	"example.org/tundish/check/draw"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
)

// hoursOfYear ends the axis of the load duration.
const hoursOfYear = 8760

// LoadDuration draws the load over the hours of a year, straight between the
// ends that the basis states (load-curve), with the output of one unit, two
// units and so on, and how many of them the load asks for.
func LoadDuration(p *plant.Plant, r *solve.Results, _ *check.Report) ([]byte, error) {
	const what = "the load duration"
	basis := p.Block("basis")
	curve := basis.Child("load-curve")
	hours, base := curve.Get("hours"), curve.Get("base")
	switch {
	case curve == nil || !hours.Known():
		return nil, &Missing{what, "the load-curve in the basis"}
	case !base.Known():
		return nil, &Missing{what, "the base of the load-curve in the basis"}
	case hours.Num <= 0 || hours.Num/3600 > hoursOfYear:
		return nil, &Missing{what, fmt.Sprintf("between 0 and %d hours in the load-curve", hoursOfYear)}
	}
	load := r.Get(basis, "load", solve.Always)
	if !load.Known() {
		return nil, &Missing{what, lacking(load, basis)}
	}
	unit := load.Unit
	if unit == "" {
		unit = "kW"
	}
	h, full, least := hours.Num/3600, load.Num, load.Num*base.Num
	at := func(x float64) float64 { return full + (least-full)*x/h }
	a := panel("Load over the hours of a year and units that it asks for", "hours of the year with at least this load", "heat, "+unit)
	if err := line(a, "load, straight between its stated ends", plotter.XYs{{X: 0, Y: in(full, unit)}, {X: h, Y: in(least, unit)}, {X: h, Y: 0}}, blue, 2.4, nil); err != nil {
		return nil, err
	}
	sum, right := 0.0, h
	var stairs plotter.XYs
	needed := 0
	for k, u := range p.Units() {
		q := r.Get(u, "output", solve.Always)
		if !q.Known() {
			return nil, &Missing{what, lacking(q, u)}
		}
		sum += q.Num
		name := ""
		if k == 0 {
			name = "output of one unit, two units, ..."
		}
		if err := line(a, name, plotter.XYs{{X: 0, Y: in(sum, unit)}, {X: hoursOfYear, Y: in(sum, unit)}}, grey, 0.7, []vg.Length{1, 2}); err != nil {
			return nil, err
		}
		if right <= 0 {
			continue
		}
		left := 0.0 // from here on so many units are enough
		if sum < full && full > least {
			left = min(max(h*(full-sum)/(full-least), 0), right)
		}
		if sum >= at(right)*(1-1e-9) {
			stairs = append(stairs, plotter.XY{X: right, Y: in(sum, unit)}, plotter.XY{X: left, Y: in(sum, unit)})
			right = left
			needed = k + 1
		}
	}
	if len(stairs) > 0 {
		name := fmt.Sprintf("units that the load asks for, up to %d of %d", needed, len(p.Units()))
		if right > 0 {
			name = fmt.Sprintf("all %d units, less than the load asks for", len(p.Units()))
		}
		if err := line(a, name, stairs, orange, 1.8, styles[1].dash); err != nil {
			return nil, err
		}
	}
	a.X.Min, a.X.Max, a.Y.Min, a.Y.Max = 0, hoursOfYear, 0, in(max(sum, full), unit)*1.35
	a.Legend.Top = true
	return render(draw.Title("Load duration", p), "The load over the hours of a year with the outputs of the units.", a)
}

package plot

import (
	"math"

	"gonum.org/v1/plot/plotter"

	"example.org/tundish/check"
	"example.org/tundish/check/draw"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
)

// FluePressure draws the pressure along the first flue in the three firing
// cases: all units full, one at minimum beside the others, that one alone.
func FluePressure(p *plant.Plant, r *solve.Results, rep *check.Report) ([]byte, error) {
	const what = "the flue pressure"
	f := p.One("flue")
	if f == nil {
		return nil, &Missing{what, "a flue"}
	}
	list, lack := solve.FlueProfiles(r, f)
	if lack != "" {
		return nil, &Missing{what, lack}
	}
	unit, along := "Pa", lengthUnit(p)
	if p.US() {
		unit = "inWC"
	}
	a := panel("From the outlet of "+list[0].Unit.Label()+" to the terminal, "+f.Label(), along+" from the outlet of the unit", "pressure, "+unit)
	low, top, far := 0.0, math.Inf(-1), 0.0
	for i, l := range list {
		var pts plotter.XYs
		for _, q := range l.Points {
			x, y := in(q.Distance, along), in(q.Pressure, unit)
			pts = append(pts, plotter.XY{X: x, Y: y})
			low, top, far = min(low, y), max(top, y), max(far, x)
		}
		st := styles[i%len(styles)]
		if err := line(a, caseName(l), pts, st.color, 2, st.dash); err != nil {
			return nil, err
		}
	}
	if l, ok := flueLimit(rep, f); ok && in(l, unit) < 4*max(top, in(10, unit)) {
		l = in(l, unit)
		top = max(top, l)
		if err := level(a, "most that the class allows", 0, far, l); err != nil {
			return nil, err
		}
	}
	span := max(top-low, in(1, unit))
	a.X.Min, a.X.Max = 0, far
	a.Y.Min, a.Y.Max = low-span*0.05, top+span*0.4
	a.Legend.Top = true
	return render(draw.Title("Flue pressure", p), "Pressure along the flue from one unit to the terminal in the three firing cases.", a)
}

func caseName(l solve.FlueProfile) string {
	switch l.Case {
	case solve.OneLow:
		return l.Unit.Label() + " at minimum, the others full"
	case solve.OneAlone:
		return l.Unit.Label() + " alone at minimum"
	}
	return "all units full"
}

// flueLimit is the least upper limit that a pressure of the flue was held
// against.
func flueLimit(rep *check.Report, f *plant.Part) (limit float64, ok bool) {
	if rep == nil {
		return 0, false
	}
	for i := range rep.Comparisons {
		c := &rep.Comparisons[i]
		if c.AtLeast || c.Quantity.Name != "pressure" || c.Quantity.Part != f && c.Quantity.Part.Owner != f {
			continue
		}
		if !ok || c.Limit.Num < limit {
			limit, ok = c.Limit.Num, true
		}
	}
	return limit, ok
}

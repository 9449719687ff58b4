package plot_test

import (
	"errors"
	"math"
	"os"
	"strings"
	"testing"

	"example.org/tundish/check"
	"example.org/tundish/check/draw/plot"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/rules"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

const examples = "../../../examples/"

func example(t *testing.T, name string, edits ...string) *check.Report {
	t.Helper()
	b, err := os.ReadFile(examples + name + ".plant")
	if err != nil {
		t.Fatal(err)
	}
	text := strings.NewReplacer(edits...).Replace(string(b))
	read := func(name, text string) *lang.File {
		f := lang.Parse(lang.NewSource(name, text), lang.NewCache())
		lang.Bind(f, lang.Language())
		return f
	}
	p := plant.Resolve(read(name, text), func(path string) (*lang.File, error) {
		b, err := os.ReadFile(examples + path)
		return read(path, string(b)), err
	})
	return check.Run(check.Input{Plant: p, Rules: rules.All()})
}

type drawing func(*plant.Plant, *solve.Results, *check.Report) ([]byte, error)

func panels(t *testing.T, rep *check.Report, d drawing, n int) []*curves {
	t.Helper()
	svg, err := d(rep.Plant, rep.Results, rep)
	if err != nil {
		t.Fatal(err)
	}
	list := decode(t, svg)
	if len(list) != n {
		t.Fatalf("%d panels, not %d", len(list), n)
	}
	return list
}

// value is a row of the values in the unit of an axis.
func value(t *testing.T, rep *check.Report, u *lang.Unit, part *plant.Part, name string, c solve.Case) float64 {
	t.Helper()
	q := rep.Results.Get(part, name, c)
	if !q.Known() {
		t.Fatalf("no value %s of %s", name, part.Label())
	}
	return lang.FromSI(q.Num, u)
}

// input is a number that was put into the calculation of a value, in SI.
func input(t *testing.T, rep *check.Report, part *plant.Part, name string, c solve.Case, in string) float64 {
	t.Helper()
	q := rep.Results.Get(part, name, c)
	if q != nil {
		for _, i := range q.Inputs {
			if i.Name == in {
				return i.Num
			}
		}
	}
	t.Fatalf("%s of %s has no input %s", name, part.Label(), in)
	return 0
}

var plants = []string{"in-line", "back-to-back", "us-units", "l-shaped-faulty"}

// The gas pressure of every unit is the end of its way and its mark, and each
// step along the way is the loss of that piece.
func TestGasPressurePlotsTheValues(t *testing.T) {
	for _, name := range plants {
		rep := example(t, name)
		list := panels(t, rep, plot.GasPressure, 2)
		run, each := list[0], list[1]
		u := run.unit(t, "gas pressure")
		units := rep.Plant.Units()
		var ways [][]xy
		for _, w := range run.lines {
			for _, l := range w {
				if len(l) > 2 {
					ways = append(ways, l)
				}
			}
		}
		if len(ways) != len(units) || len(each.points["at the inlet of the unit"]) != len(units) || len(each.names) != len(units) {
			t.Fatalf("%s: %d ways, %d marks, %d names for %d units", name, len(ways), len(each.points["at the inlet of the unit"]), len(each.names), len(units))
		}
		least := math.Inf(1)
		for i, x := range units {
			want := value(t, rep, u, x, "gas-pressure", solve.AllFull)
			least = min(least, want)
			if got := each.points["at the inlet of the unit"][i]; got.x != float64(i) || !each.near(got.y, want) || each.names[i] != x.Label() {
				t.Errorf("%s: the mark of %s stands at %v under %s, want %.4f", name, x.Label(), got, each.names[i], want)
			}
			found := 0
			for _, w := range ways {
				if run.near(w[len(w)-1].y, want) {
					found++
				}
			}
			if found == 0 {
				t.Errorf("%s: no way ends at %.4f, the pressure of %s", name, want, x.Label())
			}
		}
		worst := ""
		for key, l := range run.lines {
			if strings.HasSuffix(key, ", the least") {
				worst = key
				if end := l[0][len(l[0])-1]; !run.near(end.y, least) {
					t.Errorf("%s: %s ends at %.4f, the least is %.4f", name, key, end.y, least)
				}
			}
		}
		if worst == "" {
			t.Fatalf("%s: no way of the worst unit: %q", name, run.texts)
		}
		way := run.lines[worst][0]
		at, step := 0.0, 0
		m := run.far(t, "from the supply")
		for _, pipe := range rep.Plant.Block("gas-run").Children("pipe") {
			loss := value(t, rep, u, pipe, "pressure-loss", solve.AllFull)
			p1 := lang.FromSI(input(t, rep, pipe, "pressure-loss", solve.AllFull, "p1"), u)
			a, b := way[2*step], way[2*step+1]
			long := lang.FromSI(pipe.Get("length").Num, m)
			if !run.near(a.y, p1) || !run.near(b.y, p1-loss) || !run.nearX(a.x, at) || !run.nearX(b.x, at+long) {
				t.Errorf("%s: %s goes from %v to %v, want %.4f at %.3f to %.4f at %.3f", name, pipe.Label(), a, b, p1, at, p1-loss, at+long)
			}
			at += long
			step++
		}
	}
}

// The limit in the plot of gas pressure is the greatest of the units' least
// pressures, read from the catalogue.
func TestGasPressureShowsTheLimit(t *testing.T) {
	list := panels(t, example(t, "in-line"), plot.GasPressure, 2)
	for _, p := range list {
		l := p.lines["least that the units allow"]
		if len(l) != 1 || !p.near(l[0][0].y, 17.5) || !p.near(l[0][1].y, 17.5) {
			t.Errorf("the limit is drawn at %v, the catalogue says 17.5 mbar", l)
		}
	}
}

// Flows, design flows and pressures between the headers are those of the values.
func TestHeadersPlotTheValues(t *testing.T) {
	for _, name := range plants {
		rep := example(t, name)
		list := panels(t, rep, plot.Headers, 2)
		flow, across := list[0], list[1]
		fu, pu := flow.unit(t, "flow"), across.unit(t, "pressure difference")
		for i, x := range rep.Plant.Units() {
			for _, m := range []struct {
				p         *curves
				u         *lang.Unit
				key, name string
				c         solve.Case
			}{
				{flow, fu, "solved, all units running", "flow", solve.AllFull},
				{flow, fu, "design", "design-flow", solve.Always},
				{across, pu, "at the take-offs of the unit", "header-pressure", solve.AllFull},
			} {
				want := value(t, rep, m.u, x, m.name, m.c)
				if pts := m.p.points[m.key]; len(pts) != len(rep.Plant.Units()) || pts[i].x != float64(i) || !m.p.near(pts[i].y, want) {
					t.Errorf("%s: %s of %s is drawn at %v, want %.4f", name, m.name, x.Label(), pts, want)
				}
			}
		}
	}
}

// In each firing case the curve starts with the pressure at the outlet of the
// unit with the least margin and ends with the pressure of the wind.
func TestFluePressurePlotsTheValues(t *testing.T) {
	for _, name := range plants {
		rep := example(t, name)
		p := panels(t, rep, plot.FluePressure, 1)[0]
		u := p.unit(t, "pressure")
		var worst *plant.Part
		for _, x := range rep.Plant.Units() {
			if worst == nil || value(t, rep, u, x, "flue-margin", solve.OneLow) < value(t, rep, u, worst, "flue-margin", solve.OneLow) {
				worst = x
			}
		}
		long := 0.0
		for _, x := range rep.Plant.ByKind("riser") {
			long += lang.FromSI(x.Get("length").Num, p.far(t, "from the outlet of the unit"))
		}
		for key, c := range map[string]solve.Case{
			"all units full": solve.AllFull, worst.Label() + " at minimum, the others full": solve.OneLow, worst.Label() + " alone at minimum": solve.OneAlone,
		} {
			lines := p.lines[key]
			if len(lines) != 1 {
				t.Errorf("%s: %d curves %q", name, len(lines), key)
				continue
			}
			l := lines[0]
			first, last := l[0], l[len(l)-1]
			if want := lang.FromSI(input(t, rep, worst, "flue-margin", c, "p at the outlet of the unit"), u); !p.near(first.y, want) || first.x != 0 && !p.nearX(first.x, 0) {
				t.Errorf("%s: %s starts at %v, want %.4f", name, key, first, want)
			}
			if want := lang.FromSI(input(t, rep, worst, "flue-margin", c, "wind"), u); !p.near(last.y, want) {
				t.Errorf("%s: %s ends at %v, the wind is %.4f", name, key, last, want)
			}
			if riser := last.x - l[len(l)-2].x; !p.nearX(riser, long) {
				t.Errorf("%s: %s has a riser of %.3f, stated are %.3f", name, key, riser, long)
			}
			for i := 1; i < len(l); i++ {
				if l[i].x < l[i-1].x-1e-9 {
					t.Errorf("%s: %s runs back at %v", name, key, l[i])
				}
			}
		}
	}
}

// at reads a line at x.
func at(l []xy, x float64) float64 {
	for i := 1; i < len(l); i++ {
		if a, b := l[i-1], l[i]; x >= a.x && x <= b.x && b.x > a.x {
			return a.y + (b.y-a.y)*(x-a.x)/(b.x-a.x)
		}
	}
	return math.NaN()
}

// The solved point lies on the curve of the pump, the needed head on that of the
// circuit, which is a parabola through it.
func TestPumpsPlotTheValues(t *testing.T) {
	for _, name := range plants {
		rep := example(t, name)
		p := panels(t, rep, plot.Pumps, 1)[0]
		fu, hu := p.unit(t, "flow"), p.unit(t, "head")
		var worst *plant.Part
		for _, x := range rep.Plant.Units() {
			if worst == nil || value(t, rep, hu, x, "pump-margin", solve.AllFull) < value(t, rep, hu, worst, "pump-margin", solve.AllFull) {
				worst = x
			}
		}
		flow, head := value(t, rep, fu, worst, "flow", solve.AllFull), value(t, rep, hu, worst, "pump-head", solve.AllFull)
		design, need := value(t, rep, fu, worst, "design-flow", solve.Always), value(t, rep, hu, worst, "needed-head", solve.AllFull)
		solved, needed := p.points["solved network, all units running"], p.points["head needed at the design flow"]
		if len(solved) != 1 || !p.nearX(solved[0].x, flow) || !p.near(solved[0].y, head) {
			t.Errorf("%s: solved is drawn at %v, want %.4f, %.4f", name, solved, flow, head)
		}
		if len(needed) != 1 || !p.nearX(needed[0].x, design) || !p.near(needed[0].y, need) {
			t.Errorf("%s: needed is drawn at %v, want %.4f, %.4f", name, needed, design, need)
		}
		pump, system := p.lines["pump at its setting"], p.lines["circuit, as the square of the flow through the design point"]
		if len(pump) != 1 || len(system) != 1 {
			t.Fatalf("%s: the curves are missing: %q", name, p.texts)
		}
		// Between the 12 points from one stated point to the next the curve is
		// drawn straight.
		if got := at(pump[0], flow); math.Abs(got-head) > 0.01*head {
			t.Errorf("%s: the pump gives %.4f at the solved flow, the value is %.4f", name, got, head)
		}
		for _, part := range []float64{0.25, 0.5, 1} {
			if got, want := at(system[0], design*part), need*part*part; math.Abs(got-want) > 0.01*need {
				t.Errorf("%s: the circuit needs %.4f at %.0f %% of the design flow, want %.4f", name, got, 100*part, want)
			}
		}
	}
}

// The load falls from its stated greatest to its stated base, and so many units
// run at each hour as carry the load, and no more.
func TestLoadDurationPlotsTheStaging(t *testing.T) {
	rep := example(t, "back-to-back") // load-curve 5600 h base 6 %, loads 500, 130 and 60 kW, eight units
	p := panels(t, rep, plot.LoadDuration, 1)[0]
	u := p.unit(t, "heat")
	load := p.lines["load"]
	if len(load) != 1 || len(load[0]) != 3 {
		t.Fatalf("the load is drawn as %v", load)
	}
	for i, want := range []xy{{0, 690}, {5600, 0.06 * 690}, {5600, 0}} {
		if got := load[0][i]; !p.nearX(got.x, want.x) || !p.near(got.y, want.y) {
			t.Errorf("point %d of the load is %v, want %v", i, got, want)
		}
	}
	var sums []float64
	sum := 0.0
	for _, x := range rep.Plant.Units() {
		sum += value(t, rep, u, x, "output", solve.Always)
		sums = append(sums, sum)
	}
	levels := p.lines["output of one unit, two units, ..."]
	if len(levels) != len(sums) {
		t.Fatalf("%d levels for %d units", len(levels), len(sums))
	}
	for i, l := range levels {
		if !p.near(l[0].y, sums[i]) || !p.near(l[1].y, sums[i]) {
			t.Errorf("%d units are drawn at %.2f, want %.2f", i+1, l[0].y, sums[i])
		}
	}
	// Each step of the stairs is as long as the hours with so many units, of which
	// there are enough for the load at its begin.
	group := rep.Plant.UnitGroup()
	var stairs []xy
	for key, l := range p.lines {
		if strings.HasPrefix(key, "output of the units that run, ") {
			stairs = l[0]
			mean := rep.Results.Group(group, "running-units", solve.Mean, solve.Always)
			if want := lang.Num(mean.Num, 3) + " in the mean"; !strings.HasSuffix(key, want) {
				t.Errorf("the legend says %q, the value is %s", key, want)
			}
		}
	}
	if len(stairs) < 4 {
		t.Fatalf("no staging: %q", p.texts)
	}
	at, step := 0.0, 0
	for n := len(sums); n > 0; n-- {
		q := rep.Results.Get(group, solve.HoursWith(n), solve.Always)
		if !q.Known() {
			t.Fatalf("no hours with %d units", n)
		}
		if q.Num <= 0 {
			continue
		}
		a, b := stairs[2*step], stairs[2*step+1]
		next := at + q.Num/3600
		if !p.nearX(a.x, at) || !p.nearX(b.x, next) || !p.near(a.y, sums[n-1]) || !p.near(b.y, sums[n-1]) {
			t.Errorf("%d units are drawn from %v to %v, want %.1f kW from %.1f to %.1f h", n, a, b, sums[n-1], at, next)
		}
		if asks := 690 - (690-41.4)*at/5600; sums[n-1] < asks*(1-1e-9) {
			t.Errorf("at %.0f h %d units give %.1f kW, the load is %.1f kW", at, n, sums[n-1], asks)
		}
		at = next
		step++
	}
	if len(stairs) != 2*step {
		t.Errorf("%d points of the staging, want %d", len(stairs), 2*step)
	}
	least := value(t, rep, u, group, "least-heat", solve.Always)
	found := false
	for key, l := range p.lines {
		if strings.HasPrefix(key, "least heat of one unit") {
			found = p.near(l[0][0].y, least) && p.near(l[0][1].y, least)
		}
	}
	if !found {
		t.Errorf("the least heat is not drawn at %.2f kW: %q", least, p.texts)
	}
}

// A plot that lacks a value says which, and is not drawn.
func TestMissingIsSaid(t *testing.T) {
	for _, c := range []struct {
		d       drawing
		name    string
		was, is string
		must    string
	}{
		{plot.LoadDuration, "l-shaped-faulty", "", "", "load-curve"},
		{plot.GasPressure, "in-line", "steel DN65 14 m rise", "steel 14 m rise", "size of G1"},
		{plot.FluePressure, "in-line", "connector C1..C4", "# connector C1..C4", "a connector from a unit"},
	} {
		var edits []string
		if c.was != "" {
			edits = []string{c.was, c.is}
		}
		rep := example(t, c.name, edits...)
		svg, err := c.d(rep.Plant, rep.Results, rep)
		var m *plot.Missing
		if !errors.As(err, &m) || !strings.Contains(m.Needs, c.must) || len(svg) > 0 {
			t.Errorf("%s without %q: %v, %d bytes", c.name, c.must, err, len(svg))
		}
	}
}

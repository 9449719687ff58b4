package network_test

import (
	"math"
	"testing"

	"example.org/tundish/check/calc/network"
)

// element is a link as the tests know it, with its own reckoning of the loss:
// the friction factor by bracketing, no slopes, no start values.
type element struct {
	from, to     int
	kind         string // pipe, fitting, loss, pump
	pipe         network.Pipe
	points       []network.Point
	oneWay, shut bool
}

// sketch is a network as the tests know it. Nodes 0 to len(fixed)-1 are fixed
// heads, the others junctions with a demand.
type sketch struct {
	viscosity float64
	fixed     []float64
	demand    []float64
	elements  []element
}

func (k *sketch) nodes() int { return len(k.fixed) + len(k.demand) }

// solver builds the network; node i of the sketch is node i of the solver.
func (k *sketch) solver(tb testing.TB) *network.Solver {
	tb.Helper()
	s, err := network.New(k.viscosity)
	must := func(err error) {
		if err != nil {
			tb.Fatal(err)
		}
	}
	must(err)
	for _, h := range k.fixed {
		_, err = s.AddFixed(h)
		must(err)
	}
	for _, d := range k.demand {
		_, err = s.AddJunction(d)
		must(err)
	}
	for _, e := range k.elements {
		a, b := network.Node(e.from), network.Node(e.to)
		var l network.Link
		switch e.kind {
		case "pipe":
			p := e.pipe
			p.OneWay = e.oneWay
			l, err = s.AddPipe(a, b, p)
		case "fitting":
			l, err = s.AddFitting(a, b, e.pipe.Bore, e.pipe.Loss, e.oneWay)
		case "loss":
			l, err = s.AddLoss(a, b, e.points, e.oneWay)
		case "pump":
			l, err = s.AddPump(a, b, e.points, e.oneWay)
		}
		must(err)
		if e.shut {
			s.SetOpen(l, false)
		}
	}
	return s
}

// bracket finds the root of a rising f between low and high, never leaving the
// bracket.
func bracket(f func(float64) float64, low, high float64) float64 {
	fl, fh := f(low), f(high)
	for i := 0; i < 200 && high-low > 1e-15*(math.Abs(low)+math.Abs(high))+1e-18; i++ {
		x := (low*fh - high*fl) / (fh - fl)
		if i%3 == 2 || !(x > low && x < high) {
			x = (low + high) / 2
		}
		v := f(x)
		if v == 0 {
			return x
		}
		if v < 0 {
			low, fl = x, v
		} else {
			high, fh = x, v
		}
	}
	return (low + high) / 2
}

// factor is the Darcy factor: 64/Re, a straight bridge, Colebrook by bracketing.
func factor(re, rough float64) float64 {
	turbulent := func(re float64) float64 {
		x := bracket(func(x float64) float64 {
			return x + 2*math.Log10(rough/3.7+2.51*x/re)
		}, 0.1, 100)
		return 1 / (x * x)
	}
	switch {
	case re <= 2000:
		return 64 / re
	case re < 4000:
		return 0.032 + (turbulent(4000)-0.032)*(re-2000)/2000
	}
	return turbulent(re)
}

// loss is the head lost by a flow through the open element.
func (e *element) loss(q, viscosity float64) float64 {
	size, sign := math.Abs(q), 1.0
	if q < 0 {
		sign = -1
	}
	area := math.Pi / 4 * e.pipe.Bore * e.pipe.Bore
	switch e.kind {
	case "pipe":
		if size < 1e-100 {
			return 0 // 64/Re would overflow
		}
		v := size / area
		f := factor(v*e.pipe.Bore/viscosity, e.pipe.Roughness/e.pipe.Bore)
		return sign * (f*e.pipe.Length/e.pipe.Bore + e.pipe.Loss) * v * v / 2 / 9.80665
	case "fitting":
		v := size / area
		return sign * e.pipe.Loss * v * v / 2 / 9.80665
	case "loss":
		points := append([]network.Point{{}}, e.points...)
		return sign * through(points, size)
	}
	if len(e.points) == 1 {
		p := e.points[0]
		return -4*p.Head/3 + sign*p.Head/3*math.Pow(q/p.Flow, 2)
	}
	rest := through(e.points, 0)
	if q < 0 { // the first piece, mirrored about no flow
		a, b := e.points[0], e.points[1]
		steep := (a.Head - b.Head) / (b.Flow*b.Flow - a.Flow*a.Flow)
		return -rest - steep*q*q
	}
	return -through(e.points, size)
}

// through interpolates linearly in the square of the flow.
func through(points []network.Point, q float64) float64 {
	i := 1
	for i < len(points)-1 && q > points[i].Flow {
		i++
	}
	a, b := points[i-1], points[i]
	share := (q*q - a.Flow*a.Flow) / (b.Flow*b.Flow - a.Flow*a.Flow)
	return a.Head + share*(b.Head-a.Head)
}

// satisfied checks every equation of the network: balance at the nodes, loss
// law along open links, valves. The laws rise with flow, so flows and heads
// that satisfy all of it are the answer and no other is.
func (k *sketch) satisfied(t *testing.T, what string, s *network.Solver) {
	t.Helper()
	// Square laws are linear at their foot: at most this much head more.
	const foot = 1.5e-6
	var most, high float64
	for i := range k.elements {
		r := s.Link(network.Link(i))
		most, high = max(most, math.Abs(r.Flow)), max(high, math.Abs(r.Loss))
	}
	surplus := make([]float64, k.nodes())
	for i := range k.elements {
		e := &k.elements[i]
		r := s.Link(network.Link(i))
		a, b := s.Node(network.Node(e.from)), s.Node(network.Node(e.to))
		surplus[e.from] -= r.Flow
		surplus[e.to] += r.Flow
		if e.shut {
			if r.Flow != 0 || r.Open {
				t.Errorf("%s: link %d is closed and carries %g", what, i, r.Flow)
			}
			continue
		}
		if e.oneWay && r.Flow < -1e-11*most {
			t.Errorf("%s: link %d runs backwards, %g", what, i, r.Flow)
		}
		if a.Known != b.Known && r.Open {
			t.Errorf("%s: link %d joins a known and an unknown head", what, i)
		}
		if !a.Known || !b.Known {
			continue
		}
		drop := a.Head - b.Head
		if !r.Open {
			if !e.oneWay || !r.Held {
				t.Errorf("%s: link %d is closed without a cause", what, i)
			}
			if rest := e.loss(0, k.viscosity); drop-rest > 1e-7*(high+1) {
				t.Errorf("%s: link %d is held although %g m would open it", what, i, drop-rest)
			}
			continue
		}
		if want := e.loss(r.Flow, k.viscosity); math.Abs(drop-want) > 2e-6*high+foot || math.Abs(r.Loss-want) > 2e-6*high+foot {
			t.Errorf("%s: link %d (%s) at %g m3/s: heads differ by %.10g, loss %.10g, own law %.10g", what, i, e.kind, r.Flow, drop, r.Loss, want)
		}
	}
	for i, v := range surplus {
		if i < len(k.fixed) {
			if got := s.Node(network.Node(i)).Supply; math.Abs(got+v) > 1e-9*most+1e-14 {
				t.Errorf("%s: fixed head %d supplies %g, links carry %g", what, i, got, -v)
			}
			continue
		}
		if d := k.demand[i-len(k.fixed)]; math.Abs(v-d) > 1e-9*most+1e-14 {
			t.Errorf("%s: node %d receives %g and draws %g", what, i, v, d)
		}
	}
}

package network_test

import (
	"errors"
	"math"
	"testing"

	"example.org/tundish/check/calc/network"
)

const viscosity = 4.127e-7 // m2/s, water of 70 degC

func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

func solved(t *testing.T, s *network.Solver) {
	t.Helper()
	if err := s.Solve(); err != nil {
		t.Fatal(err)
	}
}

// ladder is a pair of headers with equal units between, invented data.
func ladder(s *network.Solver, units int, reverse bool, flow float64) []network.Link {
	pipe := func(a, b network.Node, bore, loss float64) network.Link {
		return must(s.AddPipe(a, b, network.Pipe{Length: 1, Bore: bore, Roughness: 0.045e-3, Loss: loss}))
	}
	source := must(s.AddFixed(10))
	drain := must(s.AddJunction(flow))
	var rungs []network.Link
	var back, front, first network.Node
	for i := range units {
		r, f := must(s.AddJunction(0)), must(s.AddJunction(0))
		switch {
		case i == 0:
			pipe(source, r, 0.0689, 0.5)
			first = f
		case reverse:
			pipe(back, r, 0.0689, 0.3)
			pipe(front, f, 0.0689, 0.3)
		default:
			pipe(back, r, 0.0689, 0.3)
			pipe(f, front, 0.0689, 0.3)
		}
		rungs = append(rungs, pipe(r, f, 0.0419, 26))
		back, front = r, f
	}
	if reverse {
		first = front
	}
	pipe(first, drain, 0.0689, 0.5)
	return rungs
}

func balance(s *network.Solver, rungs []network.Link) float64 {
	low, high := math.Inf(1), 0.0
	for _, l := range rungs {
		q := s.Link(l).Flow
		low, high = min(low, q), max(high, q)
	}
	return low / high
}

// Water takes a way of equal length through every unit of a reverse return.
func TestReverseReturnBalancesBetter(t *testing.T) {
	for units := 2; units <= 8; units++ {
		direct, reverse := must(network.New(viscosity)), must(network.New(viscosity))
		a := ladder(direct, units, false, float64(units)*1.2e-3)
		b := ladder(reverse, units, true, float64(units)*1.2e-3)
		solved(t, direct)
		solved(t, reverse)
		if d, r := balance(direct, a), balance(reverse, b); units > 2 && r <= d || d >= 1 {
			t.Errorf("%d units: min/max flow %.4f direct, %.4f reverse", units, d, r)
		}
		for i := range b { // a reverse return is the same seen from either end
			if p, q := reverse.Link(b[i]).Flow, reverse.Link(b[units-1-i]).Flow; math.Abs(p-q) > 1e-9*p {
				t.Errorf("%d units: unit %d gets %.10g, its mirror %.10g", units, i+1, p, q)
			}
		}
	}
}

// With square laws alone, all flows times two means all losses times four.
func TestSquareLawsScale(t *testing.T) {
	losses := func(scale float64) (q, h []float64) {
		s := must(network.New(viscosity))
		a, b, c := must(s.AddFixed(5)), must(s.AddJunction(0)), must(s.AddJunction(2e-3*scale))
		links := []network.Link{
			must(s.AddFitting(a, b, 0.04, 3, false)),
			must(s.AddFitting(b, c, 0.03, 5, false)),
			must(s.AddLoss(a, c, []network.Point{{Flow: 1e-3, Head: 0.8}}, false)),
			must(s.AddFitting(c, b, 0.02, 9, false)),
		}
		solved(t, s)
		for _, l := range links {
			r := s.Link(l)
			q, h = append(q, r.Flow), append(h, r.Loss)
		}
		return q, h
	}
	q1, h1 := losses(1)
	q2, h2 := losses(2)
	for i := range q1 {
		if math.Abs(q2[i]-2*q1[i]) > 1e-8*math.Abs(q2[i]) || math.Abs(h2[i]-4*h1[i]) > 1e-8*math.Abs(h2[i]) {
			t.Errorf("link %d: %g m3/s and %g m, then %g and %g", i, q1[i], h1[i], q2[i], h2[i])
		}
	}
}

// A greater bore loses less, a greater coefficient more.
func TestLossIsMonotone(t *testing.T) {
	loss := func(bore, k, q float64) float64 {
		s := must(network.New(viscosity))
		l := must(s.AddPipe(must(s.AddFixed(0)), must(s.AddJunction(q)), network.Pipe{Length: 10, Bore: bore, Roughness: 0.045e-3, Loss: k}))
		solved(t, s)
		return s.Link(l).Loss
	}
	before := 0.0
	for i := range 400 { // through laminar flow, the bridge and turbulent flow
		q := 1e-6 * math.Pow(1.03, float64(i))
		now := loss(0.0419, 2, q)
		if now <= before {
			t.Fatalf("at %g m3/s the loss is %g m, before it was %g m", q, now, before)
		}
		if loss(0.0531, 2, q) >= now || loss(0.0419, 3, q) <= now {
			t.Fatalf("at %g m3/s bore or coefficient act the wrong way", q)
		}
		before = now
	}
}

// The loss has no step where the friction law changes.
func TestBridgeIsContinuous(t *testing.T) {
	const bore = 0.02
	for _, re := range []float64{2000, 4000} {
		var h [2]float64
		for i, side := range []float64{1 - 1e-9, 1 + 1e-9} {
			s := must(network.New(viscosity))
			q := side * re * viscosity * math.Pi / 4 * bore
			l := must(s.AddPipe(must(s.AddFixed(0)), must(s.AddJunction(q)), network.Pipe{Length: 1, Bore: bore, Roughness: 1e-4}))
			solved(t, s)
			h[i] = s.Link(l).Loss
		}
		if math.Abs(h[1]/h[0]-1) > 1e-8 {
			t.Errorf("at Re %g the loss steps from %.12g to %.12g m", re, h[0], h[1])
		}
	}
}

// The duty point of one pump on one square loss is known in closed form:
// 4/3 h0 - h0/3 x2 = c x2 with x = q/q0.
func TestPumpMeetsSquareLoss(t *testing.T) {
	s := must(network.New(viscosity))
	a, b := must(s.AddFixed(2)), must(s.AddJunction(0))
	pump := must(s.AddPump(a, b, []network.Point{{Flow: 1e-3, Head: 3}}, false))
	must(s.AddLoss(b, a, []network.Point{{Flow: 1e-3, Head: 2}}, false))
	solved(t, s)
	want := 1e-3 * math.Sqrt(4.0/(1+2))
	if got := s.Link(pump); math.Abs(got.Flow-want) > 1e-12 || math.Abs(got.Loss+2*4.0/3) > 1e-9 || got.Outside {
		t.Errorf("flow %.10g, want %.10g; loss %g, outside %v", got.Flow, want, got.Loss, got.Outside)
	}
	// Along square laws the flow goes with the speed.
	if err := s.SetSpeed(pump, 0.6); err != nil {
		t.Fatal(err)
	}
	solved(t, s)
	if got := s.Link(pump).Flow; math.Abs(got-0.6*want) > 1e-12 {
		t.Errorf("at speed 0.6 flow %.10g, want %.10g", got, 0.6*want)
	}
	if s.SetSpeed(pump, 0) == nil || s.SetSpeed(pump, math.NaN()) == nil {
		t.Error("a speed of 0 or none is taken")
	}
}

// A curve goes through its points; beyond them it is flagged, on them it is not.
func TestCurvesGoThroughTheirPoints(t *testing.T) {
	points := []network.Point{{Flow: 0.5e-3, Head: 5}, {Flow: 1e-3, Head: 4.5}, {Flow: 2e-3, Head: 2}}
	rising := []network.Point{{Flow: 0.5e-3, Head: 0.3}, {Flow: 1e-3, Head: 1.5}, {Flow: 2e-3, Head: 4}}
	for i := range points {
		for _, c := range []struct {
			share   float64
			outside bool
		}{{1, false}, {1.1, i == 2}, {0.9, i == 0}} {
			s := must(network.New(viscosity))
			a, b := must(s.AddFixed(0)), must(s.AddJunction(points[i].Flow*c.share))
			d := must(s.AddJunction(rising[i].Flow * c.share))
			pump := must(s.AddPump(a, b, points, true))
			unit := must(s.AddLoss(a, d, rising, false))
			solved(t, s)
			p, u := s.Link(pump), s.Link(unit)
			if p.Outside != c.outside {
				t.Errorf("pump at %g m3/s: outside is %v", p.Flow, p.Outside)
			}
			if want := c.share > 1 && i == 2; u.Outside != want {
				t.Errorf("unit at %g m3/s: outside is %v", u.Flow, u.Outside)
			}
			if c.share == 1 && (math.Abs(p.Loss+points[i].Head) > 1e-9 || math.Abs(u.Loss-rising[i].Head) > 1e-9) {
				t.Errorf("point %d: pump %g m, unit %g m", i, p.Loss, u.Loss)
			}
		}
	}
}

// A stopped pump's rung behind a non-return valve carries nothing; without the
// valve the running pump drives water back through it.
func TestCheckValveStopsBackflow(t *testing.T) {
	for _, valve := range []bool{true, false} {
		s := must(network.New(viscosity))
		a, b, c := must(s.AddFixed(3)), must(s.AddJunction(0)), must(s.AddJunction(0))
		must(s.AddPipe(a, b, network.Pipe{Length: 3, Bore: 0.0273, Loss: 9}))
		strong := must(s.AddPump(a, b, []network.Point{{Flow: 1e-3, Head: 6}}, true))
		must(s.AddPump(a, c, []network.Point{{Flow: 1e-3, Head: 0.1}}, false))
		check := must(s.AddFitting(c, b, 0.0273, 4, valve))
		solved(t, s)
		got := s.Link(check)
		if valve && (got.Open || !got.Held || got.Flow != 0) || !valve && !(got.Open && got.Flow < -1e-5) {
			t.Errorf("valve %v: %+v", valve, got)
		}
		// With the strong pump off the weak one opens the valve.
		s.SetOpen(strong, false)
		solved(t, s)
		if got := s.Link(check); !(got.Flow > 1e-5) {
			t.Errorf("valve %v, strong pump off: %+v", valve, got)
		}
	}
}

func TestPartsWithoutAFixedHead(t *testing.T) {
	var path *network.PathError
	s := must(network.New(viscosity))
	pipe := network.Pipe{Length: 1, Bore: 0.03}
	a, b := must(s.AddJunction(0)), must(s.AddJunction(1e-3))
	must(s.AddPipe(a, b, pipe))
	if err := s.Solve(); err != network.ErrNoFixedHead {
		t.Errorf("no fixed head: %v", err)
	}
	c := must(s.AddFixed(1))
	if err := s.Solve(); !errors.As(err, &path) || path.Node != a || path.Closed {
		t.Errorf("no path: %v", err)
	}
	valve := must(s.AddPipe(c, a, pipe))
	solved(t, s)
	s.SetOpen(valve, false)
	if err := s.Solve(); !errors.As(err, &path) || !path.Closed {
		t.Errorf("demand behind a closed valve: %v", err)
	}
	// Nothing drawn: the flows are known, the heads are not.
	if err := s.SetDemand(b, 0); err != nil {
		t.Fatal(err)
	}
	solved(t, s)
	if got := s.Node(a); got.Known || got.Head != 0 {
		t.Errorf("a node cut off: %+v", got)
	}
	// The only valve opens the wrong way.
	w := must(network.New(viscosity))
	f, d := must(w.AddFixed(9)), must(w.AddJunction(1e-3))
	must(w.AddFitting(d, f, 0.03, 2, true))
	if err := w.Solve(); !errors.As(err, &path) || !path.Closed {
		t.Errorf("a valve the wrong way round: %v", err)
	}
}

func TestRefusedInput(t *testing.T) {
	if _, err := network.New(0); err == nil {
		t.Error("a viscosity of 0 is taken")
	}
	s := must(network.New(viscosity))
	a, b := must(s.AddFixed(1)), must(s.AddJunction(0))
	good := network.Pipe{Length: 1, Bore: 0.03, Roughness: 1e-4}
	for name, change := range map[string]func(*network.Pipe){
		"no length":     func(p *network.Pipe) { p.Length = 0 },
		"no bore":       func(p *network.Pipe) { p.Bore = 0 },
		"bore unknown":  func(p *network.Pipe) { p.Bore = math.NaN() },
		"too rough":     func(p *network.Pipe) { p.Roughness = 0.051 * p.Bore },
		"gain":          func(p *network.Pipe) { p.Loss = -1 },
		"infinite loss": func(p *network.Pipe) { p.Loss = math.Inf(1) },
	} {
		p := good
		change(&p)
		if _, err := s.AddPipe(a, b, p); err == nil {
			t.Errorf("%s is taken", name)
		}
	}
	if _, err := s.AddPipe(a, a, good); err == nil {
		t.Error("a pipe to its own begin is taken")
	}
	if _, err := s.AddPipe(a, 7, good); err == nil {
		t.Error("an unknown node is taken")
	}
	if _, err := s.AddPump(a, b, []network.Point{{Flow: 0, Head: 3}, {Flow: 1e-3, Head: 3.1}}, false); err == nil {
		t.Error("a pump curve that rises is taken")
	}
	if _, err := s.AddLoss(a, b, []network.Point{{Flow: 1e-3, Head: 3}, {Flow: 2e-3, Head: 3}}, false); err == nil {
		t.Error("a loss curve that does not rise is taken")
	}
	if s.Links() != 0 {
		t.Errorf("%d refused links are in the network", s.Links())
	}
}

// A flow past the range of the friction law is an error, not an answer.
func TestFlowOutsideTheFrictionLaw(t *testing.T) {
	s := must(network.New(viscosity))
	must(s.AddPipe(must(s.AddFixed(1)), must(s.AddJunction(5)), network.Pipe{Length: 1, Bore: 0.02}))
	var outside *network.RangeError
	if err := s.Solve(); !errors.As(err, &outside) {
		t.Errorf("Reynolds number above 1e8: %v", err)
	}
}

func TestSolveAllocatesNothing(t *testing.T) {
	var s network.Solver
	var p plant
	if err := s.Reset(viscosity); err != nil {
		t.Fatal(err)
	}
	p.build(t, &s, 8, false)
	solved(t, &s)
	open := false
	if n := testing.AllocsPerRun(20, func() {
		s.SetOpen(p.pumps[3], open)
		open = !open
		if s.Solve() != nil {
			t.Error("not solved")
		}
		s.Cold()
		if s.Solve() != nil {
			t.Error("not solved")
		}
	}); n != 0 {
		t.Errorf("%g allocations", n)
	}
}

// Warm and cold starts give the same answer for every set of running units.
func TestWarmEqualsCold(t *testing.T) {
	var warm, cold network.Solver
	var p, c plant
	if warm.Reset(viscosity) != nil || cold.Reset(viscosity) != nil {
		t.Fatal("reset")
	}
	p.build(t, &warm, 6, true)
	c.build(t, &cold, 6, true)
	for set := range 1 << 6 {
		for i := range p.pumps {
			warm.SetOpen(p.pumps[i], set>>i&1 == 1)
			cold.SetOpen(c.pumps[i], set>>i&1 == 1)
		}
		solved(t, &warm)
		cold.Cold()
		solved(t, &cold)
		for l := range warm.Links() {
			a, b := warm.Link(network.Link(l)), cold.Link(network.Link(l))
			if math.Abs(a.Flow-b.Flow) > 1e-10 || a.Open != b.Open {
				t.Errorf("set %06b link %d: warm %+v, cold %+v", set, l, a, b)
			}
		}
	}
}

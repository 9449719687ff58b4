package network_test

import (
	"testing"

	"example.org/tundish/check/calc/network"
)

// plant is an invented plant of units with a pump each: rungs of pump, unit
// and pipe between two headers, a separator, and a secondary circuit.
type plant struct {
	pumps []network.Link
	units []network.Link
}

// build adds the plant; all data are invented.
func (p *plant) build(tb testing.TB, s *network.Solver, units int, reverse bool) {
	must := func(err error) {
		if err != nil {
			tb.Fatal(err)
		}
	}
	node := func() network.Node {
		n, err := s.AddJunction(0)
		must(err)
		return n
	}
	pipe := func(a, b network.Node, length, bore, loss float64) {
		_, err := s.AddPipe(a, b, network.Pipe{Length: length, Bore: bore, Roughness: 0.045e-3, Loss: loss})
		must(err)
	}
	p.pumps, p.units = p.pumps[:0], p.units[:0]
	bottom, err := s.AddFixed(15)
	must(err)
	top := node()
	pipe(top, bottom, 1, 0.1053, 1) // the separator
	var back, flow network.Node
	var firstFlow network.Node
	for i := range units {
		r, f := node(), node()
		if i == 0 {
			pipe(bottom, r, 1.5, 0.0809, 1)
			firstFlow = f
		} else {
			pipe(back, r, 0.9, 0.0809, 0.3)
			if reverse {
				pipe(flow, f, 0.9, 0.0809, 0.3)
			} else {
				pipe(f, flow, 0.9, 0.0809, 0.3)
			}
		}
		back, flow = r, f
		d, u := node(), node()
		pump, err := s.AddPump(r, d, []network.Point{{Flow: 1.2e-3, Head: 3}}, true)
		must(err)
		unit, err := s.AddLoss(d, u, []network.Point{{Flow: 1.0e-3, Head: 1.2}}, false)
		must(err)
		pipe(u, f, 2.4, 0.0419, 6)
		p.pumps, p.units = append(p.pumps, pump), append(p.units, unit)
	}
	out := firstFlow
	if reverse {
		out = flow
	}
	pipe(out, top, 1.5, 0.0809, 1)
	a, b := node(), node()
	_, err = s.AddPump(top, a, []network.Point{{Flow: 0, Head: 6}, {Flow: 5e-3, Head: 5}, {Flow: 9e-3, Head: 3}}, false)
	must(err)
	pipe(a, b, 40, 0.0809, 20)
	pipe(b, bottom, 40, 0.0809, 10)
}

func BenchmarkEightUnitsCold(b *testing.B) {
	var s network.Solver
	var p plant
	if err := s.Reset(4.127e-7); err != nil {
		b.Fatal(err)
	}
	p.build(b, &s, 8, false)
	b.ReportAllocs()
	for b.Loop() {
		if err := s.Reset(4.127e-7); err != nil {
			b.Fatal(err)
		}
		p.build(b, &s, 8, false)
		if err := s.Solve(); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(s.Links()), "links")
	b.ReportMetric(float64(s.Steps()), "steps")
}

// The set of running units changes by one from solve to solve.
func BenchmarkEightUnitsWarm(b *testing.B) {
	var s network.Solver
	var p plant
	if err := s.Reset(4.127e-7); err != nil {
		b.Fatal(err)
	}
	p.build(b, &s, 8, false)
	if err := s.Solve(); err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	i, open, steps, solves := 0, false, 0, 0
	for b.Loop() {
		s.SetOpen(p.pumps[i], open)
		if i++; i == len(p.pumps)-1 {
			i, open = 0, !open
		}
		if err := s.Solve(); err != nil {
			b.Fatal(err)
		}
		steps += s.Steps()
		solves++
	}
	b.ReportMetric(float64(steps)/float64(solves), "steps")
}

package solve

import (
	"math"
	"testing"

	"example.org/tundish/check/calc/network"
)

// solved builds the water side of an example up to its network.
func solved(t *testing.T, name string) *hydraulics {
	t.Helper()
	p := example(t, name)
	h := waterSide(&Context{Results: NewResults(p), P: p})
	if h.flows == nil {
		t.Fatalf("%s: the network has no answer: %s", name, h.missing)
	}
	return h
}

// Two methods agree: the flow of one unit alone along its line, and by the network
// solver with every other circuit closed.
func TestAloneAsTheNetworkSays(t *testing.T) {
	for _, name := range []string{"in-line.plant", "back-to-back.plant", "us-units.plant"} {
		h := solved(t, name)
		b := &builder{s: &network.Solver{}, h: h, rho: h.state.Density}
		if err := b.build(); err != nil {
			t.Fatal(err)
		}
		for i := range h.units {
			for k := range h.units {
				b.s.SetOpen(h.units[k].returnPump, k == i)
			}
			if err := b.s.Solve(); err != nil {
				t.Fatal(err)
			}
			want := b.s.Link(h.units[i].flowLink).Flow
			if d := math.Abs(h.flows.alone[i]/want - 1); !(d < 1e-6) {
				t.Errorf("%s unit %d alone: %g m3/s along its line, %g by the network", name, i+1, h.flows.alone[i], want)
			}
		}
	}
}

// Laws of parallel circuits on common pipes: a unit alone gets more than with the
// others, with one off the others get more than with all, and the pump's head at
// the solved flow is what the circuit loses.
func TestFewerUnitsGetMore(t *testing.T) {
	for _, name := range []string{"in-line.plant", "back-to-back.plant", "us-units.plant"} {
		h := solved(t, name)
		f := h.flows
		for i := range h.units {
			if f.alone[i] <= f.all[i] {
				t.Errorf("%s unit %d: %g alone, %g with all", name, i+1, f.alone[i], f.all[i])
			}
			if i != f.largest && (f.oneOff[i] <= f.all[i] || f.oneOff[i] >= f.alone[i]) {
				t.Errorf("%s unit %d: %g with one off, between %g and %g is wanted", name, i+1, f.oneOff[i], f.all[i], f.alone[i])
			}
			u := &h.units[i]
			head := h.c.Get(u.unit, "pump-head", AllFull)
			if !head.Known() {
				t.Fatalf("%s unit %d: no head", name, i+1)
			}
			lost := u.in.only(f.all[i], 1, &h.state) + u.out.only(f.all[i], 1, &h.state) + u.loss.lost(f.all[i]) + f.across[i]
			if d := math.Abs(head.Num/lost - 1); !(d < 1e-6) {
				t.Errorf("%s unit %d: the pump gives %g Pa, its circuit takes %g", name, i+1, head.Num, lost)
			}
		}
	}
}

// A curve by hand: 10 kPa at 1, 40 kPa at 2 m3/h is a square law, so 2.5 at 0.5
// and 90 at 3; a pump of 50 kPa at no flow and 20 kPa at 3 m3/h is 50 - 30/9 q2.
func TestCurves(t *testing.T) {
	const hour = 3600.
	loss := curvePoints{flow: []float64{1 / hour, 2 / hour}, pa: []float64{10e3, 40e3}}
	for _, c := range [][2]float64{{0.5, 2.5e3}, {1, 10e3}, {1.5, 22.5e3}, {3, 90e3}} {
		if got := loss.lost(c[0] / hour); math.Abs(got-c[1]) > 1e-6 {
			t.Errorf("loss at %g m3/h: %g Pa, want %g", c[0], got, c[1])
		}
	}
	pump := curvePoints{flow: []float64{0, 3 / hour}, pa: []float64{50e3, 20e3}}
	if got, ok := pump.at(1.5 / hour); !ok || math.Abs(got-42.5e3) > 1e-6 {
		t.Errorf("head %g Pa, %v", got, ok)
	}
	if _, ok := pump.at(3.1 / hour); ok {
		t.Error("a head beyond the curve")
	}
	// 50 - 10/3 q2 = 10 q2 at q = sqrt(3.75); at half speed 12.5 - 10/3 q2.
	if got := pump.meets(10e3*hour*hour, 1) * hour; math.Abs(got-math.Sqrt(3.75)) > 1e-9 {
		t.Errorf("meets at %g m3/h", got)
	}
	if got := pump.meets(10e3*hour*hour, 0.5) * hour; math.Abs(got-math.Sqrt(3.75)/2) > 1e-9 {
		t.Errorf("at half speed meets at %g m3/h", got)
	}
}

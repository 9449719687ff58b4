package network_test

import (
	"errors"
	"fmt"
	"math"
	"math/rand"
	"testing"

	"example.org/tundish/check/calc/network"
)

// randomSketch invents a network: a tree that reaches every node and some
// links more.
func randomSketch(r *rand.Rand, junctions, fixed, more int, valves bool) sketch {
	k := sketch{viscosity: 3e-7 + 1e-6*r.Float64()}
	for range fixed {
		k.fixed = append(k.fixed, 20*r.Float64())
	}
	for range junctions {
		d := 0.0
		if r.Intn(3) == 0 {
			d = 2e-3 * r.Float64()
		}
		k.demand = append(k.demand, d)
	}
	n := junctions + fixed
	add := func(a, b int) {
		if r.Intn(2) == 0 {
			a, b = b, a
		}
		e := element{from: a, to: b, kind: "pipe"}
		bore := []float64{0.0216, 0.0273, 0.036, 0.0419, 0.0531, 0.0809, 0.1053}[r.Intn(7)]
		e.pipe = network.Pipe{Length: 0.2 + 30*r.Float64(), Bore: bore, Roughness: 0.2e-3 * r.Float64(), Loss: 30 * r.Float64() * float64(r.Intn(2))}
		q := (0.3 + 3*r.Float64()) * 1e-3
		switch r.Intn(8) {
		case 0:
			e.kind = "fitting"
			e.pipe.Loss = 0.5 + 10*r.Float64()
		case 1:
			e.kind, e.points = "loss", []network.Point{{Flow: q, Head: 3 * r.Float64()}}
		case 2:
			e.kind, e.points = "loss", []network.Point{{Flow: q, Head: 0.4}, {Flow: 2 * q, Head: 1.1 + r.Float64()}, {Flow: 3 * q, Head: 4}}
		case 3:
			e.kind, e.points = "pump", []network.Point{{Flow: q, Head: 1 + 5*r.Float64()}}
		case 4:
			e.kind, e.points = "pump", []network.Point{{Flow: 0, Head: 6}, {Flow: q, Head: 5 + r.Float64()}, {Flow: 2 * q, Head: 3}, {Flow: 3 * q, Head: 0.5}}
		}
		if valves {
			e.oneWay = r.Intn(3) == 0
			e.shut = r.Intn(12) == 0
		}
		k.elements = append(k.elements, e)
	}
	for i := 1; i < n; i++ {
		add(r.Intn(i), i)
	}
	for range more {
		a, b := r.Intn(n), r.Intn(n)
		if a != b {
			add(a, b)
		}
	}
	return k
}

// fed reports whether every node that draws water can be reached from a fixed
// head through open links in the direction their valves allow. With demands of
// 0 or more an answer exists exactly then: heads may fall without bound.
func (k *sketch) fed() bool {
	reached := make([]bool, k.nodes())
	for i := range k.fixed {
		reached[i] = true
	}
	for again := true; again; {
		again = false
		for _, e := range k.elements {
			if e.shut {
				continue
			}
			if reached[e.from] && !reached[e.to] {
				reached[e.to], again = true, true
			}
			if !e.oneWay && reached[e.to] && !reached[e.from] {
				reached[e.from], again = true, true
			}
		}
	}
	for i, d := range k.demand {
		if d > 0 && !reached[len(k.fixed)+i] {
			return false
		}
	}
	return true
}

func TestRandomNetworksSatisfyEveryEquation(t *testing.T) {
	r := rand.New(rand.NewSource(7))
	solved, refused, most := 0, 0, 0
	for i := range 3000 {
		k := randomSketch(r, 1+r.Intn(40), 1+r.Intn(3), r.Intn(30), i%3 > 0)
		what := fmt.Sprintf("network %d", i)
		s := k.solver(t)
		err := s.Solve()
		var path *network.PathError
		if errors.As(err, &path) && path.Closed {
			refused++
			if k.fed() {
				t.Errorf("%s: %v, though every demand can be fed", what, err)
			}
			continue
		}
		if err != nil {
			t.Errorf("%s: %v", what, err)
			continue
		}
		if !k.fed() {
			t.Errorf("%s is solved though a demand cannot be fed", what)
		}
		solved++
		most = max(most, s.Steps())
		k.satisfied(t, what, s)

		// Another status, solved warm, must satisfy all of it too.
		j := r.Intn(len(k.elements))
		k.elements[j].shut = !k.elements[j].shut
		s.SetOpen(network.Link(j), !k.elements[j].shut)
		switch err := s.Solve(); {
		case errors.As(err, &path) && path.Closed:
			if k.fed() {
				t.Errorf("%s, link %d changed: %v, though every demand can be fed", what, j, err)
			}
		case err != nil:
			t.Errorf("%s, link %d changed: %v", what, j, err)
		default:
			k.satisfied(t, what+" changed", s)
		}
	}
	t.Logf("%d solved, %d refused, at most %d steps", solved, refused, most)
	if solved < 1500 || refused < 100 {
		t.Errorf("%d solved and %d refused: the sample is lopsided", solved, refused)
	}
}

// In these two changing all wrong valves at once goes in circles; they were
// found by search and are solved with the valves changed one by one.
func TestValvesThatGoInCircles(t *testing.T) {
	for _, seed := range []int64{10018, 17747} {
		k := randomSketch(rand.New(rand.NewSource(seed)), 40, 1, 40, true)
		s := k.solver(t)
		if err := s.Solve(); err != nil {
			t.Errorf("seed %d: %v", seed, err)
			continue
		}
		if s.Steps() < 40 {
			t.Errorf("seed %d: %d steps; the case no longer tries the valves one by one", seed, s.Steps())
		}
		k.satisfied(t, fmt.Sprintf("seed %d", seed), s)
	}
}

// flow brackets the flow of an element from the difference of heads across it.
func (k *sketch) flow(e *element, drop float64) float64 {
	if e.shut || e.oneWay && drop <= e.loss(0, k.viscosity) {
		return 0
	}
	return bracket(func(q float64) float64 { return e.loss(q, k.viscosity) - drop }, -1, 1)
}

// relax solves the sketch by bracketing alone: node after node gets the head
// at which its links carry what it draws, each link's flow being itself
// bracketed, until no head moves.
func (k *sketch) relax() (head []float64, still bool) {
	head = append([]float64(nil), k.fixed...)
	head = append(head, make([]float64, len(k.demand))...)
	for range 200 {
		var moved float64
		for i := len(k.fixed); i < len(head); i++ {
			h := bracket(func(h float64) float64 {
				out := k.demand[i-len(k.fixed)]
				for j := range k.elements {
					e := &k.elements[j]
					switch i {
					case e.from:
						out += k.flow(e, h-head[e.to])
					case e.to:
						out -= k.flow(e, head[e.from]-h)
					}
				}
				return out
			}, -2000, 2000)
			moved = max(moved, math.Abs(h-head[i]))
			head[i] = h
		}
		if moved < 1e-9 {
			return head, true
		}
	}
	return head, false
}

// The slow method knows no matrix, no slope and no start.
func TestSmallNetworksAgainstBracketing(t *testing.T) {
	r := rand.New(rand.NewSource(11))
	for i := 0; i < 20; {
		k := randomSketch(r, 1+r.Intn(4), 1+r.Intn(2), 1+r.Intn(3), i%2 == 1)
		if !k.fed() {
			continue
		}
		s := k.solver(t)
		if err := s.Solve(); err != nil {
			t.Fatalf("network %d: %v", i, err)
		}
		// The flows are unique; behind a valve that holds a head need not be.
		head, still := k.relax()
		if !still {
			continue // too slow for this one
		}
		var most float64
		for l := range k.elements {
			most = max(most, math.Abs(s.Link(network.Link(l)).Flow))
		}
		for l := range k.elements {
			e := &k.elements[l]
			got, want := s.Link(network.Link(l)).Flow, k.flow(e, head[e.from]-head[e.to])
			if math.Abs(got-want) > 1e-6*most+5e-7 { // heads still within 1e-9 m leave so much in a square law
				t.Errorf("network %d link %d: flow %.9g, by bracketing %.9g", i, l, got, want)
			}
		}
		i++
	}
}

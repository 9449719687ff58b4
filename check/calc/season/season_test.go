package season

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"
)

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if math.Abs(got-want) > tolerance*math.Max(1, math.Abs(want)) {
		t.Errorf("%s: %.12g, want %.12g", what, got, want)
	}
}

// A triangle of 300 kW falling to nothing in 6000 h, three units of 100 kW that
// go down to 20 kW. By hand: heat 300 x 6000/2 = 900 MWh. As few units as can
// carry the load: 2000 h each with three, two and one. Below 20 kW one unit
// cycles: 6000 x 20/300 = 400 h with 20 x 400/2 = 4 MWh. With C dT = 2 kWh the
// starts are the integral of L (P - L)/(P C dT): 400 h x P/(6 C dT) =
// 400 x 20/12 = 666.67.
func TestTriangle(t *testing.T) {
	const h, kW, kWh = 3600.0, 1e3, 3.6e6
	c := Curve{{0, 300 * kW}, {6000 * h, 0}}
	if err := c.Check(); err != nil {
		t.Fatal(err)
	}
	s := Sequence{Units: []Unit{{20 * kW, 100 * kW}, {20 * kW, 100 * kW}, {20 * kW, 100 * kW}}}
	if err := s.Check(); err != nil {
		t.Fatal(err)
	}
	y := s.Over(c, 2*kWh)
	near(t, "heat", y.Heat/kWh, 900e3, 1e-12)
	for n := range 3 {
		near(t, "hours by unit", y.Hours[n]/h, 2000, 1e-12)
	}
	near(t, "mean number", y.Running(), 2, 1e-12)
	near(t, "hours at least", y.LeastTime/h, 400, 1e-12)
	near(t, "heat at least", y.LeastHeat/kWh, 4000, 1e-12)
	near(t, "starts", y.Starts, 400*20/12.0, 1e-12)
	near(t, "short", y.Short, 0, 1e-9)

	// Most units: two from 40 kW, three from 60 kW.
	s.MostUnits = true
	y = s.Over(c, 2*kWh)
	near(t, "hours with one", y.Hours[0]/h, 800, 1e-12)
	near(t, "hours with two", y.Hours[1]/h, 400, 1e-12)
	near(t, "hours with three", y.Hours[2]/h, 4800, 1e-12)
	near(t, "hours at least", y.LeastTime/h, 400, 1e-12)

	// Released at 35 %: two from 70 kW, three from 105 kW; brought on at 80 % does
	// not bind.
	s.BringOn, s.Release = 0.8, 0.35
	y = s.Over(c, 0)
	near(t, "hours with one", y.Hours[0]/h, 1400, 1e-12)
	near(t, "hours with two", y.Hours[1]/h, 700, 1e-12)
	near(t, "hours with three", y.Hours[2]/h, 3900, 1e-12)

	// Released at 10 %, below the least rate of 20 %: two from 20 kW, three from
	// 30 kW. From 20 to 30 kW two cycle (200 h), from 30 to 60 kW three (600 h).
	s.Release = 0.1
	y = s.Over(c, 0)
	near(t, "hours at least", y.LeastTime/h, 400+200+600, 1e-12)

	// Fewest, brought on at 80 %: one to 80 kW, two to 160 kW.
	s = Sequence{Units: s.Units, BringOn: 0.8}
	y = s.Over(c, 0)
	near(t, "hours with one", y.Hours[0]/h, 1600, 1e-12)
	near(t, "hours with two", y.Hours[1]/h, 1600, 1e-12)
	near(t, "hours with three", y.Hours[2]/h, 2800, 1e-12)

	// Two units only: 1/3 of the time over 200 kW, 2000 h x 50 kW owed.
	s = Sequence{Units: s.Units[:2]}
	y = s.Over(c, 0)
	near(t, "short", y.Short/h, 2000, 1e-9)
	near(t, "owed", y.ShortHeat/kWh, 100e3, 1e-9)
}

// A load that stands still has nothing to integrate: 10 kW for 1000 h under a
// unit of at least 20 kW, C dT = 2 kWh. On for 2/10 h, off for 2/10 h: 2.5
// starts an hour.
func TestSteadyLoad(t *testing.T) {
	c := Curve{{0, 10e3}, {1000 * 3600, 10e3}}
	s := Sequence{Units: []Unit{{20e3, 100e3}}}
	y := s.Over(c, 2*3.6e6)
	near(t, "starts", y.Starts, 2500, 1e-12)
	near(t, "hours", y.LeastTime/3600, 1000, 1e-12)
	near(t, "mean number", y.Running(), 1, 1e-12)
}

// Random curves and sequences against sums over a hundred thousand moments, each
// with the number of units and the cycle that its load asks for.
func TestAgainstSums(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 7))
	for range 40 {
		c := Curve{{0, 100e3 + 900e3*r.Float64()}}
		for range 1 + r.IntN(4) {
			last := c[len(c)-1]
			c = append(c, Point{last.Time + 3.6e5 + 5e6*r.Float64(), last.Load * r.Float64()})
		}
		s := Sequence{MostUnits: r.IntN(2) == 0}
		for range 1 + r.IntN(8) {
			most := 30e3 + 120e3*r.Float64()
			s.Units = append(s.Units, Unit{most * (0.1 + 0.3*r.Float64()), most})
		}
		if r.IntN(2) == 0 {
			s.BringOn = 0.6 + 0.4*r.Float64()
		}
		if r.IntN(2) == 0 {
			s.Release = 0.05 + 0.3*r.Float64()
		}
		capacity := 1e6 + 1e8*r.Float64()
		if c.Check() != nil || s.Check() != nil {
			t.Fatal("the test made no curve")
		}
		y := s.Over(c, capacity)
		const n = 200000
		dt := c.Span() / n
		var heat, least, leastHeat, starts, running float64
		at := 1
		for k := range n {
			now := (float64(k) + 0.5) * dt
			for c[at].Time < now {
				at++
			}
			a, b := c[at-1], c[at]
			load := a.Load + (b.Load-a.Load)*(now-a.Time)/(b.Time-a.Time)
			on, sumLeast, sumMost := 1, s.Units[0].Least, s.Units[0].Most
			for on < len(s.Units) {
				u := s.Units[on]
				bring := sumMost
				if s.BringOn > 0 {
					bring = s.BringOn * sumMost
				}
				keep := math.Inf(1)
				if s.MostUnits {
					keep = sumLeast + u.Least
					if s.Release > 0 {
						keep = s.Release * (sumMost + u.Most)
					}
				}
				if load < bring && load < keep {
					break
				}
				on, sumLeast, sumMost = on+1, sumLeast+u.Least, sumMost+u.Most
			}
			heat += load * dt
			running += float64(on) / n
			if load < sumLeast {
				least, leastHeat = least+dt, leastHeat+load*dt
				onTime, offTime := capacity/(sumLeast-load), capacity/load
				starts += float64(on) * dt / (onTime + offTime)
			}
		}
		near(t, "heat", y.Heat, heat, 1e-6)
		near(t, "mean number", y.Running(), running, 1e-4)
		near(t, "share of time at least", y.LeastTime/y.Time, least/y.Time, 1e-4)
		near(t, "share of heat at least", y.LeastHeat/y.Heat, leastHeat/heat, 1e-4)
		near(t, "starts", y.Starts, starts, 2e-3)
	}
}

// The law of the weather: the design at full heat, the room without heat; 80/60
// at half heat by hand: 20 + 50 x 0.5^(1/1.3) - 10 x 0.5 ... = 20 + 29.34 - 5.
func TestWeather(t *testing.T) {
	w := Weather{Flow: 80, Return: 60, Room: 20, Exponent: 1.3}
	if err := w.Check(); err != nil {
		t.Fatal(err)
	}
	near(t, "full", w.Back(1), 60, 1e-12)
	near(t, "none", w.Back(0), 20, 1e-12)
	near(t, "half", w.Back(0.5), 20+50*0.586730-5, 1e-5)
	for _, c := range []float64{25, 40, 54.6, 59.9} {
		near(t, "back again", w.Back(w.Share(c)), c, 1e-9)
	}
	near(t, "always", w.Share(60), 1, 0)
	near(t, "never", w.Share(20), 0, 0)
	// A straight law: exponent 1, return = room + share x (return - room).
	w = Weather{Flow: 70, Return: 50, Room: 20, Exponent: 1}
	near(t, "straight", w.Share(35), 0.5, 1e-9)
	// 40/21 in a room of 20 degC: the law is highest, 21.4 degC, at half of the heat.
	w = Weather{Flow: 40, Return: 21, Room: 20, Exponent: 1.3}
	if s := w.Share(21.2); s > 0.5 || math.Abs(w.Back(s)-21.2) > 1e-9 {
		t.Errorf("the first crossing of 21.2 degC is %g", s)
	}
	near(t, "over the top", w.Share(30), 1, 0)
}

func TestNoCurve(t *testing.T) {
	for _, c := range []Curve{nil, {{0, 5}}, {{1, 5}, {2, 4}}, {{0, 5}, {0, 4}}, {{0, 5}, {1, 6}}} {
		if err := c.Check(); !errors.Is(err, ErrCurve) {
			t.Errorf("%v: %v", c, err)
		}
	}
	for _, c := range []Curve{{{0, 5}, {9000 * 3600, 1}}, {{0, math.NaN()}, {1, 1}}, {{0, 5}, {1, -1}}} {
		if c.Check() == nil {
			t.Errorf("%v passes", c)
		}
	}
	for _, s := range []Sequence{{}, {Units: []Unit{{2, 1}}}, {Units: []Unit{{1, 2}}, BringOn: 1.1}, {Units: []Unit{{1, 2}}, Release: -1}} {
		if s.Check() == nil {
			t.Errorf("%v passes", s)
		}
	}
}

// A load that stands still counts above a bound that it equals, and only between
// the bounds around it.
func TestStandingLoad(t *testing.T) {
	c := Curve{{0, 30}, {100, 30}, {300, 10}, {400, 10}}
	for _, b := range []struct{ low, high, time, heat float64 }{
		{30, 50, 100, 3000},            // the first stretch
		{10, 30, 300, 100*10 + 200*20}, // the slope and the last stretch
		{0, 10, 0, 0},
		{31, 50, 0, 0},
		{10, 20, 200, 100*10 + 100*15},
	} {
		time, heat := c.Between(b.low, b.high)
		near(t, "time", time, b.time, 1e-12)
		near(t, "heat", heat, b.heat, 1e-12)
	}
	// 100 s at 10 W of a generator that gives 20 W into 50 J: L (P - L)/(P C).
	flat := Curve{{0, 10}, {100, 10}}
	near(t, "starts", flat.Starts(0, 20, 20, 50), 100*10*10/(20.*50), 1e-12)
	near(t, "starts above", flat.Starts(11, 20, 20, 50), 0, 1e-12)
	near(t, "starts below", flat.Starts(0, 10, 20, 50), 0, 1e-12)
}

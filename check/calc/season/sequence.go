package season

import (
	"math"

	"example.org/tundish/check/calc/within"
)

// Unit is the heat that a unit gives while it fires, in W.
type Unit struct{ Least, Most float64 }

// Sequence says how units are brought on, in their order.
type Sequence struct {
	Units []Unit
	// MostUnits runs as many units as the release allows; otherwise as few as
	// the bring-on allows.
	MostUnits bool
	// BringOn is the share of the running units' greatest heat above which the
	// next is brought on, Release the share below which the last is released; 0:
	// not stated, so that units are brought on at their greatest heat and
	// released at their least.
	BringOn, Release float64
}

// Check reports what keeps the sequence from being one: no unit, or a unit whose
// least is over its most, shares out of 0 to 1.
func (s *Sequence) Check() error {
	if err := within.Range("number of units", float64(len(s.Units)), 1, 64, ""); err != nil {
		return err
	}
	for _, u := range s.Units {
		if err := within.Range("greatest heat of a unit", u.Most, 1, 1e8, "W"); err != nil {
			return err
		}
		if err := within.Range("least heat of a unit", u.Least, 1, u.Most, "W"); err != nil {
			return err
		}
	}
	if err := within.Range("share at which the next unit is brought on", s.BringOn, 0, 1, ""); err != nil {
		return err
	}
	return within.Range("share at which the last unit is released", s.Release, 0, 1, "")
}

// Year is what a sequence does over a curve.
type Year struct {
	Time, Heat       float64   // s and J of the whole curve
	Hours            []float64 // s with one unit, two, ...
	LeastTime        float64   // s in which the running units are at their least and cycle
	LeastHeat        float64   // J in it
	Starts           float64   // of single units, by cycling at their least
	Short, ShortHeat float64   // s in which the load is over all units together, and J that they owe
}

// Over runs the sequence along the curve. The capacity in J/K times the
// switching difference in K is what a cycling unit stores; 0: starts are not
// counted. The curve and the sequence must have passed Check.
//
// Between n and n+1 units it switches at
//
//	L = min(release M(n+1), bring-on M(n)) with most units, bring-on M(n) with fewest
//
// M(n) the sum of the greatest heats. Below the sum of their least heats the
// running units cycle together. Sources: SourceSequence, SourceCycling.
func (s *Sequence) Over(c Curve, capacity float64) Year {
	y := Year{Hours: make([]float64, len(s.Units))}
	y.Time, y.Heat = c.Between(0, math.Inf(1))
	low, least, most := 0.0, 0.0, 0.0
	for n := range s.Units {
		least, most = least+s.Units[n].Least, most+s.Units[n].Most
		high := math.Inf(1)
		if n+1 < len(s.Units) {
			high = s.next(n, least, most)
		}
		y.Hours[n], _ = c.Between(low, high)
		if end := math.Min(least, high); end > low {
			t, q := c.Between(low, end)
			y.LeastTime, y.LeastHeat = y.LeastTime+t, y.LeastHeat+q
			if capacity > 0 {
				y.Starts += float64(n+1) * c.Starts(low, end, least, capacity)
			}
		}
		low = math.Max(low, high)
	}
	over, heat := c.Between(most*(1+1e-12), math.Inf(1))
	y.Short, y.ShortHeat = over, math.Max(0, heat-over*most)
	return y
}

// next is the load at which unit n+1 joins the first n.
func (s *Sequence) next(n int, least, most float64) float64 {
	on := most
	if s.BringOn > 0 {
		on *= s.BringOn
	}
	if !s.MostUnits {
		return on
	}
	off := least + s.Units[n+1].Least
	if s.Release > 0 {
		off = s.Release * (most + s.Units[n+1].Most)
	}
	return math.Min(off, on)
}

// Running is the mean number of units over the time of the curve.
func (y *Year) Running() float64 {
	sum := 0.0
	for n, t := range y.Hours {
		sum += float64(n+1) * t
	}
	return sum / y.Time
}

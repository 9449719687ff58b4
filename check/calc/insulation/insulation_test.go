package insulation_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"example.org/tundish/check/calc/insulation"
	"example.org/tundish/check/calc/within"
)

func heating(outsideMM, k float64) insulation.Pipe {
	return insulation.Pipe{
		Outside: outsideMM / 1000, Conductivity: k, Surface: insulation.Surface,
		Inside: insulation.LimitInside, Ambient: insulation.LimitAmbient,
	}
}

func no(tb testing.TB, err error) {
	tb.Helper()
	if err != nil {
		tb.Fatal(err)
	}
}

// TestThicknessTable compares with a table worked beside the rules from the
// limits: thickness in whole mm at three conductivities and the loss of the bare
// pipe in whole W/m. A cross-check of the sum, not a printed reference.
func TestThicknessTable(t *testing.T) {
	for _, c := range []struct {
		outside          float64
		at25, at35, at40 float64 // mm
		bare             float64 // W/m
	}{
		{17.2, 14, 26, 34, 32},
		{21.3, 16, 30, 39, 40},
		{26.9, 18, 33, 43, 51},
		{33.7, 20, 35, 45, 64},
		{42.4, 22, 37, 47, 80},
		{48.3, 23, 39, 49, 91},
		{60.3, 25, 41, 51, 114},
		{76.1, 27, 44, 54, 143},
		{88.9, 28, 45, 55, 168},
		{114.3, 30, 47, 57, 215},
		{139.7, 32, 48, 58, 263},
		{168.3, 33, 50, 59, 317},
	} {
		limit, err := insulation.LimitFor(c.outside)
		no(t, err)
		for _, k := range []struct{ k, want float64 }{{0.025, c.at25}, {0.035, c.at35}, {0.040, c.at40}} {
			p := heating(c.outside, k.k)
			s, err := p.Thickness(limit)
			no(t, err)
			if math.Abs(1000*s-k.want) > 1 {
				t.Errorf("%g mm at %g: %.1f mm, want %g", c.outside, k.k, 1000*s, k.want)
			}
			q, err := p.Loss(s)
			no(t, err)
			if math.Abs(q-limit) > 1e-9*limit {
				t.Errorf("%g mm: the thickness loses %g of %g W/m", c.outside, q, limit)
			}
		}
		p := heating(c.outside, 0.035)
		bare, err := p.Loss(0)
		no(t, err)
		if math.Abs(bare-c.bare) > 0.6 {
			t.Errorf("%g mm bare: %.1f W/m, want %g", c.outside, bare, c.bare)
		}
	}
	// 60.3 mm pipe, 25 mm at 0.035: 20 W/m against 14.5; 41 mm are needed.
	p := heating(60.3, 0.035)
	q, err := p.Loss(0.025)
	no(t, err)
	if math.Abs(q-20) > 0.5 {
		t.Errorf("25 mm lose %.2f W/m", q)
	}
}

// TestFlatLimit: on a very large pipe the sum becomes that of a flat wall.
func TestFlatLimit(t *testing.T) {
	p := insulation.Pipe{Outside: 2, Conductivity: 0.04, Surface: 10, Inside: 80, Ambient: 20}
	q, err := p.Loss(0.02)
	no(t, err)
	flat := 60 / (0.02/0.04 + 0.1) * math.Pi * 2.02
	if math.Abs(q/flat-1) > 0.01 {
		t.Errorf("%g W/m against %g of a flat wall", q, flat)
	}
}

// TestLossFalls: beyond D = 2 k/h more insulation loses less.
func TestLossFalls(t *testing.T) {
	for _, outside := range []float64{15, 60.3, 168.3} {
		p := heating(outside, 0.04)
		last := math.Inf(1)
		for s := 0.0; s <= 0.3; s += 0.005 {
			q, err := p.Loss(s)
			no(t, err)
			if q >= last {
				t.Errorf("%g mm: %g mm more lose more", outside, 1000*s)
			}
			last = q
		}
	}
	// A wire with poor insulation: a thin layer loses more than none, and the
	// thickness found is beyond it.
	wire := insulation.Pipe{Outside: 0.006, Conductivity: 0.05, Surface: 5, Inside: 80, Ambient: 20}
	bare, err := wire.Loss(0)
	no(t, err)
	thin, err := wire.Loss(0.005)
	no(t, err)
	if thin <= bare {
		t.Error("no peak of the loss")
	}
	s, err := wire.Thickness(0.95 * bare)
	no(t, err)
	q, err := wire.Loss(s)
	no(t, err)
	if q > 0.95*bare*(1+1e-9) {
		t.Errorf("%g m lose %g of %g", s, q, bare)
	}
}

func TestLimits(t *testing.T) {
	if insulation.SourceLimits.Firm() {
		t.Error("limits from memory decide errors")
	}
	last := 0.0
	for _, l := range insulation.Limits() {
		got, err := insulation.LimitFor(l.Outside)
		no(t, err)
		if got != l.Loss || got <= last {
			t.Errorf("%g mm: %g", l.Outside, got)
		}
		last = got
	}
	between, err := insulation.LimitFor(54)
	no(t, err)
	if between <= 12.94 || between >= 14.45 {
		t.Errorf("54 mm: %g", between)
	}
	for _, c := range []struct{ fahrenheit, size, want float64 }{{180, 1.25, 1.5}, {180, 1.5, 2}, {180, 6, 2}, {140, 1.25, 1}, {140, 1.5, 1.5}, {141, 1.25, 1.5}} {
		if s, err := insulation.USThickness(c.fahrenheit, c.size); err != nil || s != c.want {
			t.Errorf("%g degF, %g in: %g, %v", c.fahrenheit, c.size, s, err)
		}
	}
}

func TestOutOfRange(t *testing.T) {
	nan := math.NaN()
	p := heating(60.3, 0.035)
	with := func(change func(*insulation.Pipe)) func() (float64, error) {
		return func() (float64, error) {
			c := p
			change(&c)
			return c.Loss(0.02)
		}
	}
	for name, f := range map[string]func() (float64, error){
		"no pipe":      with(func(p *insulation.Pipe) { p.Outside = 0 }),
		"conductivity": with(func(p *insulation.Pipe) { p.Conductivity = nan }),
		"surface":      with(func(p *insulation.Pipe) { p.Surface = 0 }),
		"inside":       with(func(p *insulation.Pipe) { p.Inside = 400 }),
		"ambient":      with(func(p *insulation.Pipe) { p.Ambient = nan }),
		"thickness":    func() (float64, error) { return p.Loss(-0.01) },
		"limit 0":      func() (float64, error) { return p.Thickness(0) },
		"cold pipe":    func() (float64, error) { c := p; c.Inside = 5; return c.Thickness(10) },
		"size":         func() (float64, error) { return insulation.LimitFor(17.1) },
		"large size":   func() (float64, error) { return insulation.LimitFor(219.1) },
		"us hot":       func() (float64, error) { return insulation.USThickness(201, 2) },
		"us size":      func() (float64, error) { return insulation.USThickness(180, 0) },
	} {
		var out *within.Error
		if v, err := f(); !errors.As(err, &out) || v != 0 {
			t.Errorf("%s: %g, %v", name, v, err)
		}
	}
	if _, err := p.Thickness(0.5); !errors.Is(err, insulation.ErrLossUnreached) {
		t.Error(err)
	}
	if s, err := p.Thickness(1000); err != nil || s != 0 {
		t.Errorf("a bare pipe that passes: %g, %v", s, err)
	}
}

func TestNoAllocation(t *testing.T) {
	p := heating(60.3, 0.035)
	if n := testing.AllocsPerRun(100, func() {
		limit, _ := insulation.LimitFor(60.3)
		_, _ = p.Thickness(limit)
		_, _ = p.Loss(0.02)
	}); n != 0 {
		t.Errorf("%g allocations per call", n)
	}
}

// DN50 with 25 mm of insulation, and what the limit asks for.
func ExamplePipe_Thickness() {
	p := insulation.Pipe{Outside: 0.0603, Conductivity: 0.035, Surface: insulation.Surface, Inside: 75, Ambient: 15}
	q, err := p.Loss(0.025)
	fmt.Printf("%.1f W/m %v\n", q, err)
	limit, err := insulation.LimitFor(60.3)
	fmt.Printf("limit %.2f W/m %v\n", limit, err)
	s, err := p.Thickness(limit)
	fmt.Printf("%.0f mm %v\n", 1000*s, err)
	// Output:
	// 19.8 W/m <nil>
	// limit 14.45 W/m <nil>
	// 41 mm <nil>
}

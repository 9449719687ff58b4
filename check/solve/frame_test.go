package solve_test

import (
	"fmt"
	"math"
	"os"
	"path"
	"strings"
	"testing"

	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

func framed(t *testing.T, frame string) *plant.Plant {
	t.Helper()
	parse := func(name, text string) *lang.File {
		f := lang.Parse(lang.NewSource(name, text), nil)
		lang.Bind(f, lang.Language())
		return f
	}
	f := parse("examples/x.plant", "plant \"Test plant, invented\"\nuse \"catalogue.plant\"\nbasis {\n  jurisdiction UK\n}\nunits U1..U5 {\n  type Wall-100\n}\n"+frame)
	for _, p := range f.Problems {
		t.Fatal(p.Message)
	}
	return plant.Resolve(f, func(name string) (*lang.File, error) {
		b, err := os.ReadFile("../../examples/" + path.Base(name))
		return parse(name, string(b)), err
	})
}

const cornerFrame = `frame Fr l-shaped {
  row Long U1..U3
  row Short U4..U5
  section S1..S2 1.30 m straight mass 30 kg
  section S3 0.9 m corner mass 34 kg
  section S4 1.30 m straight mass 30 kg
  feet 8 off adjustable
  depth 0.90 m
  height 1.90 m
  mass 180 kg at 450 mm
  standing free
  pitch 0.65 m
  offset %s
  hang-height 1.5 m
  hang-order U1, U2, U3, U4, U5
}
`

// corner computes the states of the frame by another way: it looks for the
// nearest side of the pentagon of its feet by the areas of triangles, over every
// way in which the units may face and be counted.
func corner(offset float64) []float64 {
	const depth, long, short = 0.9, 2.6, 1.3
	outline := [][2]float64{{0, 0}, {depth + long, 0}, {depth + long, depth}, {depth, depth + short}, {0, depth + short}}
	angle := func(masses [][4]float64) float64 { // kg, x, y, h
		var m, x, y, h float64
		for _, p := range masses {
			m, x, y, h = m+p[0], x+p[0]*p[1], y+p[0]*p[2], h+p[0]*p[3]
		}
		x, y, h = x/m, y/m, h/m
		least := math.Inf(1)
		for i := range outline {
			a, b := outline[i], outline[(i+1)%len(outline)]
			area := (b[0]-a[0])*(y-a[1]) - (b[1]-a[1])*(x-a[0])
			least = math.Min(least, area/math.Hypot(b[0]-a[0], b[1]-a[1]))
		}
		return math.Atan2(least, h) * 180 / math.Pi
	}
	// Middle of the frame: corner, long arm, short arm by their lengths.
	own := [4]float64{180, (0.9*0.45 + 2.6*2.2 + 1.3*0.45) / 4.8, (0.9*0.45 + 2.6*0.45 + 1.3*1.55) / 4.8, 0.45}
	out := make([]float64, 6)
	for n := range out {
		out[n] = math.Inf(1)
		for _, across := range []float64{offset, depth - offset} {
			for _, l := range []float64{1, -1} {
				for _, s := range []float64{1, -1} {
					masses := [][4]float64{own}
					for i := range n {
						if i < 3 {
							masses = append(masses, [4]float64{94, depth + long/2 + l*0.65*float64(i-1), across, 1.5})
						} else {
							masses = append(masses, [4]float64{94, across, depth + short/2 + s*0.65*(float64(i-3)-0.5), 1.5})
						}
					}
					out[n] = math.Min(out[n], angle(masses))
				}
			}
		}
	}
	return out
}

func TestCornerFrame(t *testing.T) {
	for _, offset := range []float64{250, 120, -50, -400} {
		p := framed(t, fmt.Sprintf(cornerFrame, fmt.Sprintf("%g mm", offset)))
		states, needs := solve.BuildStates(p.One("frame"))
		if needs != "" || len(states) != 6 {
			t.Fatalf("%d states, needs %s", len(states), needs)
		}
		for i, want := range corner(offset / 1000) {
			if math.Abs(states[i].Angle-want) > 1e-9 {
				t.Errorf("offset %g mm, %d units: %g deg, want %g", offset, i, states[i].Angle, want)
			}
		}
	}
}

// What an L does not state is asked for.
func TestCornerFrameNeeds(t *testing.T) {
	whole := fmt.Sprintf(cornerFrame, "120 mm")
	for gone, needs := range map[string]string{
		"  section S3 0.9 m corner mass 34 kg\n": "one arm, the corner section, the other arm",
		"  row Short U4..U5\n":                   "two rows of Fr",
		"  pitch 0.65 m\n":                       "pitch",
		"  offset 120 mm\n":                      "offset",
		"  height 1.90 m\n":                      "height",
		"  hang-order U1, U2, U3, U4, U5\n":      "hang-order",
	} {
		p := framed(t, strings.Replace(whole, gone, "", 1))
		if states, got := solve.BuildStates(p.One("frame")); len(states) > 0 || !strings.Contains(got, needs) {
			t.Errorf("without %q: %d states, needs %q", gone, len(states), got)
		}
	}
}

// A short frame tips over its end sooner than over its side: one unit at the end
// of two, in the middle of the depth.
func TestFrameTipsOverItsEnd(t *testing.T) {
	p := framed(t, `frame Fr in-line {
  row Front U1..U2
  section S1 0.70 m straight mass 20 kg
  depth 1.20 m
  height 1.9 m
  mass 60 kg at 500 mm
  standing free
  pitch 0.65 m
  offset 600 mm
  hang-height 1.5 m
  hang-order U1, U2
}
`)
	states, needs := solve.BuildStates(p.One("frame"))
	if needs != "" {
		t.Fatal(needs)
	}
	// x from the left end: frame 0.35 m, U1 at 0.35 - 0.325 = 0.025 m.
	x := (60*0.35 + 94*0.025) / 154
	h := (60*0.5 + 94*1.5) / 154
	if want := math.Atan(x/h) * 180 / math.Pi; math.Abs(states[1].Angle-want) > 1e-9 {
		t.Errorf("%g deg, want %g", states[1].Angle, want)
	}
	if n := solve.SafeFrom(states, 10); n != 2 {
		t.Errorf("safe from state %d", n)
	}
}

// Full of water: the water of each unit hangs with it, and the bound of the bare
// frame takes its center at the top.
func TestBareAndFilledFrame(t *testing.T) {
	p := framed(t, fmt.Sprintf(cornerFrame, "120 mm"))
	s, needs := solve.BareState(p.One("frame"))
	if needs != "" || s.Frame.Mass != 30*3+34 || s.Frame.Height != 1.9 || !s.Bound || s.Held {
		t.Errorf("bare: %+v %s", s, needs)
	}
	s, needs = solve.FilledState(p, p.One("frame"))
	if needs != "" {
		t.Fatal(needs)
	}
	if want := 180 + 5*(94+9.5*0.98); math.Abs(s.Frame.Mass-want) > 2 { // hot or cold water: within 2 kg
		t.Errorf("full of water %g kg, want about %g", s.Frame.Mass, want)
	}
}

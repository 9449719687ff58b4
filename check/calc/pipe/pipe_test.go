package pipe

import (
	"math"
	"testing"

	"example.org/tundish/check/calc/friction"
	"example.org/tundish/check/calc/internal/reftable"
	"example.org/tundish/check/calc/water"
)

// Reference: testdata/reference/pipe_drop_water.csv: bores, velocities and
// gradients by the libraries named in its head.
func TestReferenceTable(t *testing.T) {
	materials := map[string]string{"steel_EN10255_medium": "steel", "copper_EN1057": "copper"}
	n := 0
	for _, r := range reftable.Read(t, "../../../testdata/reference/pipe_drop_water.csv") {
		material, ok := materials[r.Text("material")]
		if !ok {
			t.Fatalf("material %q", r.Text("material"))
		}
		var p *Pipe
		list := Sizes(material)
		for i := range list {
			if math.Abs(list[i].Outside*1000-r.Num("od_mm")) < 0.01 && math.Abs(list[i].Wall*1000-r.Num("wall_mm")) < 0.01 {
				p = &list[i]
			}
		}
		if p == nil {
			continue // sizes the table of the project does not carry
		}
		r.Near("bore", p.Bore()*1000, r.Num("id_mm"), 1e-9)
		if r.Text("regime") == "transition" {
			continue
		}
		s, err := water.At(r.Num("t_degC"), 3e5)
		if err != nil {
			t.Fatal(err)
		}
		v := friction.Velocity(r.Num("m_kg_s")/s.Density, p.Bore())
		f, err := friction.Factor(s.Density*v*p.Bore()/s.Viscosity, r.Num("roughness_mm")/1000/p.Bore())
		if err != nil {
			t.Fatal(err)
		}
		r.Near("velocity", v, r.Num("v_m_s"), 1e-6)
		r.Near("gradient", friction.Gradient(f, p.Bore(), s.Density, v), r.Num("dp_Pa_m"), 1e-5)
		n++
	}
	if n < 100 {
		t.Errorf("only %d rows compared", n)
	}
}

// W07 of testdata/worked/water.csv: water content of DN50 medium 2.205 l/m and
// of 42 mm copper 1.234 l/m, Faber & Kell Table 6.4. Our DN50 bore is 53.1 mm
// (outside less twice the wall), theirs 53.0.
func TestContent(t *testing.T) {
	for _, c := range []struct {
		material string
		nominal  float64
		want     float64
	}{{"steel", 0.050, 2.205e-3}, {"copper", 0.042, 1.234e-3}} {
		got := Find(c.material, c.nominal).Content()
		if math.Abs(got/c.want-1) > 0.005 {
			t.Errorf("%s %g: %g m3/m, printed %g", c.material, c.nominal, got, c.want)
		}
	}
}

// Inside diameters of schedule 40 as printed with the capacity tables of the
// International Fuel Gas Code: 0.622, 0.824, 1.049, 1.380, 1.610, 2.067, 2.469,
// 3.068, 4.026 in.
func TestSchedule40(t *testing.T) {
	want := []float64{0.622, 0.824, 1.049, 1.380, 1.610, 2.067, 2.469, 3.068, 4.026}
	for i, p := range Sizes("steel-40")[:len(want)] {
		if got := p.Bore() * 1000 / inch; math.Abs(got-want[i]) > 1e-9 {
			t.Errorf("%s: %g in, printed %g", p.Size, got, want[i])
		}
	}
}

func TestSizesRise(t *testing.T) {
	for m := range tables {
		list := Sizes(m)
		for i := range list {
			if Find(m, list[i].Nominal) != &list[i] {
				t.Errorf("%s %s is not found by its own size", m, list[i].Size)
			}
			if i > 0 && (list[i].Bore() <= list[i-1].Bore() || list[i-1].Above() != &list[i]) {
				t.Errorf("%s: %s does not follow %s", m, list[i].Size, list[i-1].Size)
			}
		}
		if list[len(list)-1].Above() != nil {
			t.Errorf("%s: the largest size has one above it", m)
		}
	}
}

// Mass of plain pipe by meter: medium series of EN 10255, DN50 5.03 kg/m and DN100
// 12.2 kg/m (from memory). Of copper and plastic the table holds no mass.
func TestMass(t *testing.T) {
	for nominal, want := range map[float64]float64{0.050: 5.03, 0.100: 12.2} {
		if got := Find("steel", nominal).Mass(); math.Abs(got/want-1) > 0.005 {
			t.Errorf("DN%g: %g kg/m, printed %g", nominal*1000, got, want)
		}
	}
	for _, m := range []string{"steel-heavy", "steel-40"} {
		if Sizes(m)[3].Mass() <= 0 {
			t.Errorf("%s has no mass", m)
		}
	}
	if m := Find("copper", 0.042).Mass(); m != 0 {
		t.Errorf("copper: %g kg/m by the density of steel", m)
	}
}

// Distances of supports as SourceSupports prints them, and the US rule of 6, 8 and
// 10 ft.
func TestGasSupport(t *testing.T) {
	for _, c := range []struct {
		material string
		nominal  float64
		want     float64
	}{
		{"steel", 0.015, 2},
		{"steel", 0.025, 2.5},
		{"steel-heavy", 0.032, 2.7},
		{"steel", 0.100, 3},
		{"copper", 0.015, 1.2},
		{"copper", 0.028, 1.8},
		{"copper", 0.054, 2.7},
		{"steel-40", 0.5 * 0.0254, 6 * 0.3048},
		{"steel-40", 0.0254, 8 * 0.3048},
		{"steel-40", 0.0508, 10 * 0.3048},
	} {
		if got, ok := GasSupport(c.material, c.nominal); !ok || got != c.want {
			t.Errorf("%s %g: %g m, printed %g", c.material, c.nominal, got, c.want)
		}
	}
	for material, nominal := range map[string]float64{"steel": 0.150, "polyethylene": 0.063} {
		if _, ok := GasSupport(material, nominal); ok {
			t.Errorf("the table has no %s of %g m", material, nominal)
		}
	}
}

package solve

import (
	"math"
	"testing"

	"example.org/tundish/check/plant"
)

// The numbers that stand beside a value are enough to compute it again by its
// formula, with arithmetic of the test's own.
func TestValuesCanBeFollowed(t *testing.T) {
	p := example(t, "in-line.plant")
	r := Run(p)
	quantity := func(part *plant.Part, name string, c Case) (*Quantity, func(string) float64) {
		t.Helper()
		q := r.Get(part, name, c)
		if !q.Known() {
			t.Fatalf("%s of %s is not known", name, part.Label())
		}
		return q, func(in string) float64 {
			t.Helper()
			for _, i := range q.Inputs {
				if i.Name == in {
					return i.Num
				}
			}
			t.Fatalf("%s does not say its %q", q.Path(), in)
			return 0
		}
	}
	same := func(q *Quantity, want, tolerance float64) {
		t.Helper()
		if math.Abs(q.Num-want) > tolerance*math.Abs(want) {
			t.Errorf("%s is %g, by its inputs %g", q.Path(), q.Num, want)
		}
	}
	find := func(name string) *plant.Part {
		t.Helper()
		part := p.Find(name)
		if part == nil {
			t.Fatalf("no part %s", name)
		}
		return part
	}

	// Darcy: (f L/D + sum K) rho v2/2.
	for _, name := range []string{"PF", "PR", "SF"} {
		q, in := quantity(find(name), "pressure-loss", Always)
		v := in("V") / (math.Pi / 4 * in("D") * in("D"))
		same(q, (in("f")*in("L")/in("D")+in("sum K"))*in("rho")*v*v/2, 1e-9)
	}

	// Isothermal flow of gas, stepwise: a thousand short pieces, Colebrook by
	// iteration, the ideal gas at 15 degC with air of 1.22499 kg/m3 at 101325 Pa.
	for _, name := range []string{"G1", "G2"} {
		q, in := quantity(find(name), "pressure-loss", AllFull)
		area := math.Pi / 4 * in("D") * in("D")
		flux := in("Q") * in("d") * 1.22499 / area
		re := flux * in("D") / in("viscosity")
		f := 0.02
		for range 100 {
			root := -2 * math.Log10(in("roughness")/in("D")/3.7+2.51/(re*math.Sqrt(f)))
			f = 1 / (root * root)
		}
		pa := in("p1") + 101325
		const steps = 1000
		for range steps {
			rho := in("d") * 1.22499 * pa / 101325
			pa -= f * (in("L") + in("fittings")) / steps / in("D") * flux * flux / (2 * rho)
		}
		same(q, in("p1")+101325-pa, 2e-3)
	}

	// Gas pressure at a unit.
	for _, u := range p.Units() {
		q, in := quantity(u, "gas-pressure", AllFull)
		same(q, in("supply")-in("losses")+in("height gain"), 1e-12)
		q, in = quantity(u, "needed-head", AllFull)
		same(q, in("unit")+in("branches")+in("headers")+in("pipes and separation"), 1e-12)
		q, in = quantity(u, "design-flow", Always)
		same(q, in("P")/(in("cp")*in("rho")*in("t_flow - t_return")), 1e-12)
	}

	// What comes back from the separator.
	sep := find("Sep")
	q, in := quantity(sep, "return-temperature", AllFull)
	same(q, in("t_flow")-in("P")/(in("m1")*in("rho")*in("cp")), 1e-9)
	q, in = quantity(sep, "return-temperature", Always)
	same(q, (in("m2")*in("t_return")+(in("m1")-in("m2"))*in("t_flow"))/in("m1"), 2e-4) // both sides at one density

	// The vessel, in bar.
	q, in = quantity(find("Ves-A"), "needed-volume", Always)
	pe, p0 := in("psv")/1e5-0.5, in("p0")/1e5
	ve := (0.31 + 3.9e-4*in("t")*in("t")) / 100 * in("Vs")
	same(q, (ve+math.Max(0.005*in("Vs"), 0.003))*(pe+1)/(pe-p0), 1e-6)

	// Heat lost by a covered pipe of 88.9 mm.
	q, in = quantity(find("PF"), "heat-loss", Always)
	outer := 0.0889 + 2*in("s")
	same(q, 60/(math.Log(outer/0.0889)/(2*math.Pi*in("k"))+1/(math.Pi*outer*10)), 1e-9)

	// Dew point by an equation of another author (Buck, water, in hPa).
	q, in = quantity(find("Head-F"), "dew-point", Always)
	vapor := 6.1121 * math.Exp((18.678-q.Num/234.5)*(q.Num/(257.14+q.Num))) * 100
	if want := in("x") * in("p"); math.Abs(vapor/want-1) > 2e-3 {
		t.Errorf("at the dew point of %g degC the vapor has %g Pa, wanted %g", q.Num, vapor, want)
	}
}

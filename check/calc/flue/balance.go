// Package flue computes the flue side: draught and friction, the pressure
// balance of a common flue with several units, temperatures, classes, fall,
// terminals and chimney height. It knows nothing of the plant language.
//
// Units are SI, temperatures in degC, pressures of the flue gas in Pa against
// the outside air at the same height: positive pushes out. A pass of any of
// these sums is no permission to fire a unit.
package flue

import (
	"errors"
	"math"

	"example.org/tundish/check/calc/within"
)

// Duct is a piece of the flue with one bore and one flow: a connecting pipe, a
// length of header between two entries, the riser.
type Duct struct {
	Next          int     // index of the duct downstream, -1: the outlet
	Bore          float64 // m, 0.02 to 3
	Length        float64 // m, 0 to 300
	Rise          float64 // m of the height gained, not more than the length either way
	Roughness     float64 // m, 0 to 0.05 of the bore
	Loss          float64 // sum of loss coefficients on the duct's own velocity head, tee at its end included
	Transmittance float64 // W/(m2.K) on the inner surface; 0: no heat loss
	Ambient       float64 // degC around the duct
}

// Common is a flue of ducts that run together to one outlet. Ducts stand in
// the order of the flow: a duct's Next comes after it, and only the last one
// is the outlet.
type Common struct {
	Ducts        []Duct
	SafetyFactor float64 // S_E on friction, 1 to 2; never on buoyancy
	Wind         float64 // pressure of the wind at the outlet, Pa, -100 to 200
	Pressure     float64 // of the outside air, Pa
	Outside      float64 // degC
	GasConstant  float64 // of the flue gas, J/(kg.K)
	HeatCapacity float64 // of the flue gas, J/(kg.K), 900 to 1500

	kept [][2]run // what the last cases made of each duct; Balance begins anew
}

// Reset empties the flue for another, and keeps its memory.
func (c *Common) Reset() { *c = Common{Ducts: c.Ducts[:0], kept: c.kept[:0]} }

// Firing is one unit in a firing case. A unit with no mass flow is stopped and
// its damper shut.
type Firing struct {
	Duct        int     // the duct that the unit's flue socket opens into
	MassFlow    float64 // kg/s; 0: stopped
	Temperature float64 // degC at the socket; not read of a stopped unit
	Push        float64 // pressure that the unit can make at its socket at this rate, air side taken off, Pa
}

// State is one duct in a firing case.
type State struct {
	MassFlow float64 // kg/s
	In       float64 // degC
	Mean     float64 // degC
	Out      float64 // degC
	Density  float64 // kg/m3 at Mean
	Velocity float64 // m/s at Mean
	Reynolds float64
	Dynamic  float64 // rho v^2/2, Pa
	Friction float64 // S_E (f L/D + K) rho v^2/2, Pa
	Buoyancy float64 // g H (rho_outside - rho), Pa, helps the flow of a rising duct
	Start    float64 // pressure at the start of the duct, Pa
	End      float64 // pressure at its end, Pa
}

// ErrDucts is returned when ducts do not run together to one outlet in order,
// or a unit opens into no duct.
var ErrDucts = errors.New("the ducts of a flue must stand in the order of the flow and run together to one outlet, and every unit must open into one of them")

// ErrNoFire is returned for a case in which no unit fires.
var ErrNoFire = errors.New("no unit fires in this case, so the flue has no flow to balance")

func (c *Common) check(firings []Firing, states []State) error {
	last := len(c.Ducts) - 1
	if last < 0 || len(states) <= last {
		return ErrDucts
	}
	if err := within.Range("safety factor", c.SafetyFactor, 1, 2, ""); err != nil {
		return err
	}
	if err := within.Range("wind pressure", c.Wind, -100, 200, "Pa"); err != nil {
		return err
	}
	if err := checkPressure(c.Pressure); err != nil {
		return err
	}
	if err := checkOutside(c.Outside); err != nil {
		return err
	}
	if err := within.Range("gas constant", c.GasConstant, 250, 350, "J/(kg.K)"); err != nil {
		return err
	}
	if err := within.Range("heat capacity", c.HeatCapacity, 900, 1500, "J/(kg.K)"); err != nil {
		return err
	}
	for i := range c.Ducts {
		d := &c.Ducts[i]
		if (d.Next == -1) != (i == last) || d.Next > last || (d.Next >= 0 && d.Next <= i) || d.Next < -1 {
			return ErrDucts
		}
		if err := d.check(); err != nil {
			return err
		}
	}
	return c.checkFirings(firings)
}

func (c *Common) checkFirings(firings []Firing) error {
	last := len(c.Ducts) - 1
	for i := range firings {
		f := &firings[i]
		if f.Duct < 0 || f.Duct > last {
			return ErrDucts
		}
		if err := within.Range("mass flow", f.MassFlow, 0, 100, "kg/s"); err != nil {
			return err
		}
		if f.MassFlow > 0 {
			if err := checkFlue(f.Temperature); err != nil {
				return err
			}
		}
	}
	return nil
}

func (d *Duct) check() error {
	if err := checkBore(d.Bore, d.Roughness); err != nil {
		return err
	}
	if err := within.Range("length", d.Length, 0, 300, "m"); err != nil {
		return err
	}
	// A rise read from a drawing may pass the length by a rounding.
	if err := within.Range("rise", d.Rise, -d.Length*(1+1e-9), d.Length*(1+1e-9), "m"); err != nil {
		return err
	}
	if err := within.Range("sum of loss coefficients", d.Loss, 0, 100, ""); err != nil {
		return err
	}
	if err := within.Range("heat transmittance", d.Transmittance, 0, 200, "W/(m2.K)"); err != nil {
		return err
	}
	return within.Range("temperature around the flue", d.Ambient, coldestAir, hottestAir, "degC")
}

// Balance computes one firing case. The answer goes into states, one place for
// each duct; the last one is at the outlet.
//
//	start = end + S_E (f L/D + K) rho w^2/2 - g H (rho_outside - rho)
//	end = start of the next duct + S_E max(0, q_next - q);  at the outlet: wind
//
// with q the velocity heads. Temperatures go with the flow: each duct cools by
// Cooled, streams mix by their mass. A duct without flow stands at the
// temperature around it. Densities are taken at the pressure of the outside
// air: 0.2 % of the velocity head at 200 Pa. Sources: SourceBalance,
// SourceCooling, SourceFriction, SourceDraught.
func (c *Common) Balance(firings []Firing, states []State) error {
	if err := c.check(firings, states); err != nil {
		return err
	}
	c.kept = append(c.kept[:0], make([][2]run, len(c.Ducts))...)
	return c.balance(firings, states)
}

// run is what a stream makes of a duct, by the flow and temperature it enters with.
type run struct {
	mass, in                                                  float64
	mean, out, density, velocity, reynolds, dynamic, friction float64
}

// through computes the run of a stream through a duct. From one case to the next
// most ducts carry one of the two streams that they carried last.
func (c *Common) through(i int, mass, in float64) *run {
	kept := &c.kept[i]
	if r := &kept[0]; r.mass == mass && r.in == in {
		return r
	}
	kept[0], kept[1] = kept[1], kept[0]
	r := &kept[0]
	if r.mass == mass && r.in == in {
		return r
	}
	d := &c.Ducts[i]
	number := d.Transmittance * math.Pi * d.Bore * d.Length / (mass * c.HeatCapacity)
	r.mass, r.in = mass, in
	r.out, r.mean = cooled(in, d.Ambient, number)
	f := flow(mass, d.Bore, d.Roughness, r.mean, density(c.Pressure, r.mean, c.GasConstant))
	r.density, r.velocity, r.reynolds, r.dynamic = f.Density, f.Velocity, f.Reynolds, f.Dynamic
	r.friction = c.SafetyFactor * (f.Gradient*d.Length + d.Loss*f.Dynamic)
	return r
}

// Again is Balance of another case of the same flue with the same states, which
// Balance took: the ducts are not checked again.
func (c *Common) Again(firings []Firing, states []State) error {
	if err := c.checkFirings(firings); err != nil {
		return err
	}
	return c.balance(firings, states)
}

func (c *Common) balance(firings []Firing, states []State) error {
	states = states[:len(c.Ducts)]
	clear(states)
	fires := false
	for i := range firings {
		f := &firings[i]
		s := &states[f.Duct]
		s.MassFlow += f.MassFlow
		s.In += f.MassFlow * f.Temperature // heat, until the duct's turn comes
		fires = fires || f.MassFlow > 0
	}
	if !fires {
		return ErrNoFire
	}
	outside := density(c.Pressure, c.Outside, AirGasConstant)
	for i := range c.Ducts {
		d, s := &c.Ducts[i], &states[i]
		if s.MassFlow == 0 {
			s.In, s.Mean, s.Out = d.Ambient, d.Ambient, d.Ambient
			s.Density = density(c.Pressure, d.Ambient, AirGasConstant)
		} else {
			s.In /= s.MassFlow
			r := c.through(i, s.MassFlow, s.In)
			s.Out, s.Mean = r.out, r.mean
			s.Density, s.Velocity, s.Reynolds, s.Dynamic, s.Friction = r.density, r.velocity, r.reynolds, r.dynamic, r.friction
			if d.Next >= 0 {
				next := &states[d.Next]
				next.MassFlow += s.MassFlow
				next.In += s.MassFlow * s.Out
			}
		}
		s.Buoyancy = gravity * d.Rise * (outside - s.Density)
	}
	for i := len(states) - 1; i >= 0; i-- {
		s := &states[i]
		if next := c.Ducts[i].Next; next < 0 {
			s.End = c.Wind
		} else {
			s.End = states[next].Start
			if s.MassFlow > 0 {
				s.End += c.SafetyFactor * math.Max(0, states[next].Dynamic-s.Dynamic)
			}
		}
		s.Start = s.End + s.Friction - s.Buoyancy
	}
	return nil
}

// Margin is the pressure in Pa that a firing unit has over what its duct asks
// for: negative when it cannot push its flue gas out. It has no meaning for a
// stopped unit, see Back.
func (f *Firing) Margin(states []State) float64 { return f.Push - states[f.Duct].Start }

// Back is the pressure in Pa that stands behind the shut damper of a stopped
// unit: above 0 the flue gas of the others presses towards the unit, and the
// damper must hold it; below 0 room air is drawn into the flue.
func (f *Firing) Back(states []State) float64 { return states[f.Duct].Start }

// Highest is the greatest pressure in Pa anywhere in the flue, the one to
// compare with its class, and the duct where it stands.
func Highest(states []State) (pascal float64, duct int) {
	pascal = math.Inf(-1)
	for i := range states {
		if states[i].Start > pascal {
			pascal, duct = states[i].Start, i
		}
		if states[i].End > pascal {
			pascal, duct = states[i].End, i
		}
	}
	return pascal, duct
}

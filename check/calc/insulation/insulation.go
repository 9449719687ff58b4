// Package insulation computes the heat lost by pipes and the thickness that
// holds it below a limit. It knows nothing of plants.
//
// Lengths are in m, temperatures in degC, losses in W per m of pipe.
package insulation

import (
	"errors"
	"math"

	"example.org/tundish/check/calc/within"
	"example.org/tundish/check/cite"
)

// Sources of the formulas and numbers of this package.
var (
	SourceHeatLoss = cite.Source{
		Work: "conduction through a hollow cylinder and heat transfer at its surface", Read: cite.Memory,
		Note: "physics; the pipe's wall and the film of the water are left out, which is on the safe side",
	}
	SourceSurface = cite.Source{
		Work: "surface coefficient of insulated pipes indoors", Read: cite.Practice, Note: "10 W/m2.K",
	}
	SourceLimits = cite.Source{
		Work: "BS 5422 and non-domestic heating guides to Part L, greatest loss of heating pipes", Read: cite.Memory,
		Note: "low-temperature heating to 95 degC, 75 degC in the pipe and 15 degC around it; the 2023 edition adds stricter tables",
	}
	SourceUS = cite.Source{
		Work: "ASHRAE 90.1 and IECC, insulation of pipes at 105 to 200 degF", Read: cite.Memory, Note: "conductivity 0.25 to 0.29 Btu.in/(h.ft2.degF)",
	}
)

// Surface is the usual coefficient at the surface in W/m2.K. Source:
// SourceSurface.
const Surface = 10.0

// MostThickness is the greatest thickness in m that the sums go to.
const MostThickness = 0.5

// Pipe is an insulated or bare pipe.
type Pipe struct {
	Outside      float64 // outer diameter, m, 0.005 to 2
	Conductivity float64 // of the insulation at its mean temperature, W/m.K, 0.01 to 1
	Surface      float64 // coefficient at the surface, W/m2.K, 1 to 100
	Inside       float64 // temperature of the pipe, degC, -50 to 300
	Ambient      float64 // temperature of the air, degC, -50 to 300
}

func (p *Pipe) check() error {
	if err := within.Range("outer diameter", p.Outside, 0.005, 2, "m"); err != nil {
		return err
	}
	if err := within.Range("conductivity of the insulation", p.Conductivity, 0.01, 1, "W/m.K"); err != nil {
		return err
	}
	if err := within.Range("surface coefficient", p.Surface, 1, 100, "W/m2.K"); err != nil {
		return err
	}
	if err := within.Range("temperature of the pipe", p.Inside, -50, 300, "degC"); err != nil {
		return err
	}
	return within.Range("temperature of the air", p.Ambient, -50, 300, "degC")
}

// resistance is that of a meter of pipe in m.K/W.
func (p *Pipe) resistance(thickness float64) float64 {
	outer := p.Outside + 2*thickness
	return math.Log(outer/p.Outside)/(2*math.Pi*p.Conductivity) + 1/(math.Pi*outer*p.Surface)
}

// Loss is the heat lost with insulation of a thickness of 0 to 0.5 m; below zero
// where the air is warmer than the pipe.
//
//	q = (tp-ta)/(ln(D/d)/(2 pi k) + 1/(pi D h)),  D = d + 2 s
//
// Source: SourceHeatLoss.
func (p *Pipe) Loss(thickness float64) (float64, error) {
	if err := p.check(); err != nil {
		return 0, err
	}
	if err := within.Range("thickness of the insulation", thickness, 0, MostThickness, "m"); err != nil {
		return 0, err
	}
	return (p.Inside - p.Ambient) / p.resistance(thickness), nil
}

// ErrLossUnreached is returned where even the greatest thickness loses more
// than the limit.
var ErrLossUnreached = errors.New("no thickness up to 500 mm holds the heat loss below the limit")

// Thickness is the least thickness in m that loses no more than a limit of
// 0.1 to 1e4 W/m, 0 where the bare pipe does. The pipe is warmer than the air.
//
// A thin layer on a thin pipe can lose more than none, up to D = 2 k/h; the
// answer lies beyond that. Found by halving the range. Source: SourceHeatLoss.
func (p *Pipe) Thickness(limit float64) (float64, error) {
	if err := p.check(); err != nil {
		return 0, err
	}
	if err := within.Range("limit of the heat loss", limit, 0.1, 1e4, "W/m"); err != nil {
		return 0, err
	}
	if err := within.Range("temperature of the pipe over the air", p.Inside-p.Ambient, 0, 350, "K"); err != nil {
		return 0, err
	}
	want := (p.Inside - p.Ambient) / limit
	if p.resistance(0) >= want {
		return 0, nil
	}
	if p.resistance(MostThickness) < want {
		return 0, ErrLossUnreached
	}
	low, high := math.Max(0, p.Conductivity/p.Surface-p.Outside/2), MostThickness
	for range 60 {
		mid := (low + high) / 2
		if p.resistance(mid) < want {
			low = mid
		} else {
			high = mid
		}
	}
	return high, nil
}

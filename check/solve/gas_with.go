package solve

import (
	"math"

	"example.org/tundish/check/calc/pipe"
	"example.org/tundish/check/plant"
)

// GasWith computes the gas run again with other pipe sizes: swap gives the pipe
// to put in place of a part's, or nil to keep it. The answer is the loss up to
// the worst unit and the least pressure at a unit, in Pa; ok is false when the
// run cannot be computed.
func GasWith(p *plant.Plant, r *Results, swap func(*plant.Part) *pipe.Pipe) (loss, least float64, ok bool) {
	block := p.Block("gas-run")
	if block == nil {
		return 0, 0, false
	}
	c := &Context{Results: r, P: p}
	t := newGasTree(c, block)
	t.flows(c)
	for i := range t.sections {
		s := &t.sections[i]
		if s.bore == 0 {
			continue
		}
		if n := swap(s.part); n != nil {
			allowance := 0.0
			if v := block.Child("fitting-allowance").First(); v.Known() {
				allowance = v.Num
			}
			s.bore, s.roughness = n.Bore(), n.Roughness
			s.equivalent = equivalentLength(s.part, n) + allowance*s.length
		}
	}
	if t.missing == "" {
		t.pressures()
	}
	if t.missing != "" {
		return 0, 0, false
	}
	least = math.Inf(1)
	for i := range t.sections {
		if t.sections[i].unit != nil {
			least = min(least, t.sections[i].outlet)
		}
	}
	return t.source - least, least, !math.IsInf(least, 1)
}

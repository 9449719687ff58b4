package vessel

import "math"

// Pressures are the pressures of a sealed plant in bar at one level; what is
// not known is NaN.
type Pressures struct {
	Static       float64 // of the water above the vessel
	Precharge    float64
	ColdFill     float64
	Hot          float64 // greatest when hot
	End          float64 // greatest working pressure
	HighCutOut   float64
	SafetyValve  float64
	LowestRating float64 // of any part
}

// Breach is a pair of pressures in the wrong order.
type Breach struct {
	Lower, Upper       string
	LowerBar, UpperBar float64
	Gap                float64 // bar that Upper must lie above Lower
}

const orderGuard = 1e-9

// Order gives the first pair that stands in the wrong order and how many pairs
// it could compare: a plant without a breach whose pairs were not all compared,
// seven, is not proved. An unknown pressure is left out and its neighbors are
// compared with each other without a gap.
//
//	static + 0.3 <= precharge < cold fill < hot <= end <= cut-out <= safety valve - 0.2, safety valve <= lowest rating
//
// Source: SourceOrder.
func (p *Pressures) Order() (b Breach, compared int, ok bool) {
	steps := [...]struct {
		name   string
		bar    float64
		gap    float64 // to the step below
		strict bool    // it must be above the step below
	}{
		{"static pressure", p.Static, 0, false},
		{"precharge", p.Precharge, PrechargeMargin, false},
		{"cold fill", p.ColdFill, 0, true},
		{"hot pressure", p.Hot, 0, true},
		{"end pressure", p.End, 0, false},
		{"high-pressure cut-out", p.HighCutOut, 0, false},
		{"safety valve", p.SafetyValve, 0.2, false},
		{"lowest rating", p.LowestRating, 0, false},
	}
	below := -1
	strict := false // some step since below had to rise
	for i := range steps {
		s := &steps[i]
		strict = strict || s.strict
		if math.IsNaN(s.bar) {
			continue
		}
		if below >= 0 {
			compared++
			l := &steps[below]
			gap := 0.0
			if below == i-1 {
				gap = s.gap
			}
			short := l.bar + gap - s.bar
			if short > orderGuard || strict && short > -orderGuard {
				return Breach{l.name, s.name, l.bar, s.bar, gap}, compared, false
			}
		}
		below, strict = i, false
	}
	return Breach{}, compared, true
}

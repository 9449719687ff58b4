package gas

import (
	"errors"

	"example.org/tundish/check/calc/within"
	"example.org/tundish/check/cite"
)

// Meter is a diaphragm meter. Loss is cite SourceMeterLoss, Volume
// SourceMeterVolume.
type Meter struct {
	Name   string
	Rating float64 // greatest flow, m3/s
	Loss   float64 // mean loss at the rating, Pa
	Volume float64 // m3
	Source cite.Source
}

var meters = [...]Meter{
	{"U16", 16.0 / 3600, 122, 0.025, SourceMeterLoss},
	{"U25", 25.0 / 3600, 162, 0.037, SourceMeterLoss},
	{"U40", 40.0 / 3600, 122, 0.067, SourceMeterLoss},
	{"U65", 65.0 / 3600, 236, 0.100, SourceMeterLoss},
	{"U100", 100.0 / 3600, 132, 0.182, SourceMeterLoss},
	{"U160", 160.0 / 3600, 290, 0.304, SourceMeterLoss},
}

// Meters returns the table of meters, smallest first.
func Meters() []Meter { return append([]Meter(nil), meters[:]...) }

// ErrMeter is returned when no meter of the table passes a flow.
var ErrMeter = errors.New("the flow is above 160 m3/h, the largest meter of the table")

// MeterFor is the smallest meter of the table that passes a flow in m3/s.
func MeterFor(flow float64) (Meter, error) {
	if err := within.Range("flow", flow, 0, 1e3, "m3/s"); err != nil {
		return Meter{}, err
	}
	for i := range meters {
		if flow <= meters[i].Rating*(1+1e-9) {
			return meters[i], nil
		}
	}
	return Meter{}, ErrMeter
}

// MeterLoss is the loss in Pa of a meter at a flow.
//
//	dp = dp_rating (Q/Q_rating)^2
//
// Flow and rating in m3/s, the loss at the rating in Pa. A flow above the
// rating is an error. Source: SourceMeterLaw.
func MeterLoss(flow, rating, lossAtRating float64) (float64, error) {
	if err := within.Range("rating of the meter", rating, 1e-6, 1e3, "m3/s"); err != nil {
		return 0, err
	}
	if err := within.Range("loss at the rating", lossAtRating, 0, 1e5, "Pa"); err != nil {
		return 0, err
	}
	if err := within.Range("flow through the meter", flow, 0, rating*(1+1e-9), "m3/s"); err != nil {
		return 0, err
	}
	part := flow / rating
	return lossAtRating * part * part, nil
}

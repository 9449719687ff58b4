package season

import (
	"math"

	"example.org/tundish/check/calc/within"
)

// Weather is a flow temperature that follows the weather so that emitters give
// just the heat that is asked for, with the water flow of the design.
type Weather struct {
	Flow, Return float64 // degC at full heat
	Room         float64 // degC
	Exponent     float64 // of the emitters: 1.3 radiators, 1.1 floors, 1 fan coils
}

// Check reports what keeps the law from holding: temperatures that do not fall
// from flow to room, an exponent out of 1 to 1.5.
func (w *Weather) Check() error {
	if err := within.Range("flow temperature", w.Flow, w.Return, 130, "degC"); err != nil {
		return err
	}
	if err := within.Range("return temperature", w.Return, w.Room, w.Flow, "degC"); err != nil {
		return err
	}
	if err := within.Range("room temperature", w.Room, 5, 40, "degC"); err != nil {
		return err
	}
	return within.Range("exponent of the emitters", w.Exponent, 1, 1.5, "")
}

// Back is the return temperature in degC at a share of the full heat, 0 to 1.
// Source: SourceEmitters.
//
//	t_return = t_room + (mean excess) x^(1/n) - (t_flow - t_return) x/2
func (w *Weather) Back(share float64) float64 {
	excess := (w.Flow+w.Return)/2 - w.Room
	return w.Room + excess*math.Pow(share, 1/w.Exponent) - (w.Flow-w.Return)*share/2
}

// Share is the share of the full heat, 0 to 1, below which the return is colder
// than a temperature; 1 when it always is. The law goes up, down only near full
// heat where the water cools almost to the room; there the answer is the first
// crossing.
func (w *Weather) Share(celsius float64) float64 {
	if celsius <= w.Room {
		return 0
	}
	excess, half := (w.Flow+w.Return)/2-w.Room, (w.Flow-w.Return)/2
	top := 1.0 // where the law is highest
	if half > 0 && w.Exponent > 1 {
		top = math.Min(1, math.Pow(excess/(w.Exponent*half), w.Exponent/(w.Exponent-1)))
	}
	if w.Back(top) <= celsius {
		return 1
	}
	low, high := 0.0, top
	for range 60 {
		mid := (low + high) / 2
		if w.Back(mid) < celsius {
			low = mid
		} else {
			high = mid
		}
	}
	return high
}

// Package stability computes whether a frame stands: center of gravity, tipping,
// loads on the floor, and what people may lift by hand. It knows nothing of
// plants.
//
// Masses are in kg, lengths in m, forces in N. A result that passes is no
// permission to hang or to lift: fixings, floor and lifting gear are judged by
// those competent for them.
package stability

import (
	"math"

	"example.org/tundish/check/calc/within"
)

// Gravity is the acceleration of free fall in m/s2.
const Gravity = 9.81

// Mass is one part of a frame in one state of its building.
type Mass struct {
	Mass   float64 // kg
	Offset float64 // m from the tipping edge inward; below 0 outside the feet
	Height float64 // m above the floor
}

// Frame is a frame with all that hangs on it.
type Frame struct {
	Mass   float64 // kg
	Offset float64 // m from the tipping edge to the center of gravity
	Height float64 // m of the center of gravity above the floor
}

// Sum gives the center of gravity of parts of 0 to 1e5 kg each within 20 m of
// the edge and below 20 m; there must be some mass.
//
//	x = sum(m x)/sum(m)
//
// Source: SourceStatics.
func Sum(parts []Mass) (Frame, error) {
	var f Frame
	for i := range parts {
		p := &parts[i]
		if err := within.Range("mass of a part", p.Mass, 0, 1e5, "kg"); err != nil {
			return Frame{}, err
		}
		if err := within.Range("offset of a part", p.Offset, -20, 20, "m"); err != nil {
			return Frame{}, err
		}
		if err := within.Range("height of a part", p.Height, 0, 20, "m"); err != nil {
			return Frame{}, err
		}
		f.Mass += p.Mass
		f.Offset += p.Mass * p.Offset
		f.Height += p.Mass * p.Height
	}
	if err := within.Range("mass of the frame", f.Mass, 0.1, 1e7, "kg"); err != nil {
		return Frame{}, err
	}
	f.Offset /= f.Mass
	f.Height /= f.Mass
	return f, nil
}

func (f *Frame) check() error {
	if err := within.Range("mass of the frame", f.Mass, 0.1, 1e7, "kg"); err != nil {
		return err
	}
	if err := within.Range("offset of the center of gravity", f.Offset, -20, 20, "m"); err != nil {
		return err
	}
	return within.Range("height of the center of gravity", f.Height, 0.01, 20, "m")
}

// TipAngle is the angle in degrees by which the frame may lean before it tips
// over the edge; below 0 it tips by itself.
//
//	angle = atan(x/h)
//
// Source: SourceStatics.
func (f *Frame) TipAngle() (float64, error) {
	if err := f.check(); err != nil {
		return 0, err
	}
	return math.Atan2(f.Offset, f.Height) * 180 / math.Pi, nil
}

// TipForce is the horizontal force in N at a height of 0.1 to 20 m that tips the
// frame; below 0 it must be held back.
//
//	F = M g x/z
//
// Source: SourceStatics.
func (f *Frame) TipForce(height float64) (float64, error) {
	if err := f.check(); err != nil {
		return 0, err
	}
	if err := within.Range("height of the force", height, 0.1, 20, "m"); err != nil {
		return 0, err
	}
	return f.Mass * Gravity * f.Offset / height, nil
}

// Limits of the tip angle in degrees and of the overturn factor. Source:
// SourceTipLimits.
const (
	TipAngleLeast  = 5.0
	TipAngleWarn   = 10.0
	OverturnFactor = 1.5
)

// Overturn is the factor of the moments that hold the frame over those that
// turn it about the edge: parts outside the feet turn it, and so does a
// horizontal force in N, 0 to 1e6, at a height of 0 to 20 m. Where nothing turns
// it the factor has no value and ok is false.
//
//	factor = sum(m g x, x > 0)/(sum(m g -x, x < 0) + F z)
//
// Source: SourceStatics.
func Overturn(parts []Mass, force, height float64) (factor float64, ok bool, err error) {
	if _, err := Sum(parts); err != nil {
		return 0, false, err
	}
	if err := within.Range("horizontal force", force, 0, 1e6, "N"); err != nil {
		return 0, false, err
	}
	if err := within.Range("height of the force", height, 0, 20, "m"); err != nil {
		return 0, false, err
	}
	hold, turn := 0.0, force*height
	for i := range parts {
		if m := parts[i].Mass * Gravity * parts[i].Offset; m > 0 {
			hold += m
		} else {
			turn -= m
		}
	}
	if turn == 0 {
		return 0, false, nil
	}
	return hold / turn, true, nil
}

// Limits of the floor: kN/m2 over the area and kN on a point. Source:
// SourceFloor.
const (
	FloorAreaMost  = 7.5
	FloorPointMost = 4.5
)

// FloorLoad is the load in kN/m2 of a mass in kg, 0 to 1e6, on an area in m2,
// 0.01 to 1e4.
//
//	q = M g/A
//
// Source: SourceStatics.
func FloorLoad(mass, area float64) (float64, error) {
	if err := within.Range("mass", mass, 0, 1e6, "kg"); err != nil {
		return 0, err
	}
	if err := within.Range("area", area, 0.01, 1e4, "m2"); err != nil {
		return 0, err
	}
	return mass * Gravity / 1000 / area, nil
}

// Feet are four feet at the corners of a rectangle.
type Feet struct {
	Depth, Width float64 // m between the feet, 0.05 to 20
}

// FootLoad is the load in kN of the heaviest of four feet, from the mass and the
// distances of the center of gravity from the front and the left feet in m. A
// center outside the feet is an error: the frame tips.
//
//	F = M g max(x, D-x)/D max(y, W-y)/W
//
// The frame is stiff and all feet are level. Source: SourceStatics.
func (f Feet) FootLoad(mass, fromFront, fromLeft float64) (float64, error) {
	if err := within.Range("mass", mass, 0, 1e6, "kg"); err != nil {
		return 0, err
	}
	if err := within.Range("depth between the feet", f.Depth, 0.05, 20, "m"); err != nil {
		return 0, err
	}
	if err := within.Range("width between the feet", f.Width, 0.05, 20, "m"); err != nil {
		return 0, err
	}
	if err := within.Range("center of gravity behind the front feet", fromFront, 0, f.Depth, "m"); err != nil {
		return 0, err
	}
	if err := within.Range("center of gravity from the left feet", fromLeft, 0, f.Width, "m"); err != nil {
		return 0, err
	}
	deep := max(fromFront, f.Depth-fromFront) / f.Depth
	wide := max(fromLeft, f.Width-fromLeft) / f.Width
	return mass * Gravity / 1000 * deep * wide, nil
}

package vessel

import (
	"math"
	"strconv"

	"example.org/tundish/check/calc/within"
)

// Expansion is the expansion of water filled at 10 degC and heated to a
// temperature of 40 to 110 degC, as a share of its volume, with an antifreeze of
// a share of 0 to 0.5.
//
//	e = (0.31 + 3.9e-4 t^2 + 3.2 additive) %
//
// Source: SourceExpansion.
func Expansion(celsius, additive float64) (float64, error) {
	if err := within.Range("temperature", celsius, 40, 110, "degC"); err != nil {
		return 0, err
	}
	if err := within.Range("share of additive", additive, 0, 0.5, ""); err != nil {
		return 0, err
	}
	return (0.31 + 3.9e-4*celsius*celsius + 3.2*additive) / 100, nil
}

// System is a sealed plant with a diaphragm vessel.
type System struct {
	Volume      float64 // water content, l, 1 to 1e6
	Expansion   float64 // of that content as a share, 0.001 to 0.1
	Precharge   float64 // bar, 0.2 to 25; see Precharge
	SafetyValve float64 // set pressure, bar, 1 to 25
}

// Sized is what a plant asks of its vessel.
type Sized struct {
	Expands     float64 // water that the plant expands by, l
	Reserve     float64 // water held ready for losses, l
	EndPressure float64 // greatest working pressure, bar
	Least       float64 // least nominal volume of the vessel, l
}

// InfeasibleError says that no vessel can serve the pressures.
type InfeasibleError struct {
	Precharge, EndPressure, SafetyValve float64 // bar
}

// Error says which pressures leave no room and what helps.
func (e *InfeasibleError) Error() string {
	bar := func(v float64) string { return strconv.FormatFloat(v, 'f', 2, 64) + " bar" }
	return "a precharge of " + bar(e.Precharge) + " leaves no room below the end pressure of " + bar(e.EndPressure) +
		" under a safety valve of " + bar(e.SafetyValve) +
		": take a safety valve of higher set pressure if every part allows it, or place the vessel higher"
}

func (s *System) check() error {
	if err := within.Range("water content", s.Volume, 1, 1e6, "l"); err != nil {
		return err
	}
	if err := within.Range("expansion", s.Expansion, 0.001, 0.1, ""); err != nil {
		return err
	}
	return within.Range("precharge", s.Precharge, 0.2, 25, "bar")
}

// Size is the least vessel.
//
//	Vmin = (Ve + Vwr) (pe+1)/(pe-p0),  Ve = e Vs,  Vwr = max(0.005 Vs, 3 l), of a vessel under 15 l a fifth
//
// Where the end pressure is not above the precharge the answer is an
// *InfeasibleError. Source: SourceEN12828.
func (s *System) Size() (Sized, error) {
	if err := s.check(); err != nil {
		return Sized{}, err
	}
	end, err := EndPressure(s.SafetyValve)
	if err != nil {
		return Sized{}, err
	}
	if end <= s.Precharge {
		return Sized{}, &InfeasibleError{s.Precharge, end, s.SafetyValve}
	}
	out := Sized{Expands: s.Expansion * s.Volume, EndPressure: end}
	factor := (end + 1) / (end - s.Precharge)
	out.Reserve = math.Max(0.005*s.Volume, 3)
	out.Least = (out.Expands + out.Reserve) * factor
	if out.Least < 15 {
		// Vwr = V/5 put into the formula and solved for V; at 15 l both rules
		// ask for 3 l.
		out.Least = out.Expands * factor / (1 - factor/5)
		out.Reserve = out.Least / 5
	}
	return out, nil
}

// Fill is the range of the cold fill pressure in bar for a vessel that is
// there.
type Fill struct {
	Least float64 // so that the reserve is in the vessel
	Most  float64 // so that the hot plant stays at the end pressure
}

// TooSmallError says that the vessel cannot serve the plant.
type TooSmallError struct {
	Nominal, Least float64 // l
}

// Error gives the vessel's volume and the least one.
func (e *TooSmallError) Error() string {
	liters := func(v float64) string { return strconv.FormatFloat(v, 'f', 0, 64) + " l" }
	return "a vessel of " + liters(e.Nominal) + " has no cold fill pressure that serves; the plant needs " + liters(math.Ceil(e.Least-1e-9))
}

// Fill is the range of the cold fill pressure for a vessel of a nominal volume
// in l up to 1e6; below the least size the answer is a *TooSmallError.
//
//	least = VN (p0+1)/(VN-Vwr) - 1
//	most  = (pe+1)/(1 + Ve (pe+1)/(VN (p0+1))) - 1
//
// The reserve of a vessel under 15 l is a fifth of it. Sources:
// SourceEN12828, SourceBoyle.
func (s *System) Fill(nominal float64) (Fill, error) {
	z, err := s.Size()
	if err != nil {
		return Fill{}, err
	}
	if err := within.Range("volume of the vessel", nominal, 0.1, 1e6, "l"); err != nil {
		return Fill{}, err
	}
	if nominal < z.Least*(1-1e-9) {
		return Fill{}, &TooSmallError{nominal, z.Least}
	}
	reserve := math.Max(0.005*s.Volume, 3)
	if nominal < 15 {
		reserve = nominal / 5
	}
	gas := nominal * (s.Precharge + 1) // l.bar, the vessel's gas before filling
	return Fill{
		Least: gas/(nominal-reserve) - 1,
		Most:  (z.EndPressure+1)/(1+z.Expands*(z.EndPressure+1)/gas) - 1,
	}, nil
}

// HotPressure is the pressure in bar of the hot plant that was filled to a cold
// pressure, above the precharge to 25 bar, with a vessel of a nominal volume in
// l.
//
//	(VN (p0+1))/(p+1) is the gas; the plant takes Ve of it
//
// Where the water would fill the vessel the answer is an error. Source:
// SourceBoyle.
func (s *System) HotPressure(nominal, coldFill float64) (float64, error) {
	if err := s.check(); err != nil {
		return 0, err
	}
	if err := within.Range("volume of the vessel", nominal, 0.1, 1e6, "l"); err != nil {
		return 0, err
	}
	if err := within.Range("cold fill pressure", coldFill, s.Precharge, 25, "bar"); err != nil {
		return 0, err
	}
	gas := nominal * (s.Precharge + 1)
	left := gas/(coldFill+1) - s.Expansion*s.Volume
	if err := within.Range("gas left in the hot vessel", left, nominal/100, nominal, "l"); err != nil {
		return 0, err
	}
	return gas/left - 1, nil
}

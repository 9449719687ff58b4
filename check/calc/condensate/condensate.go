// Package condensate computes traps, drains and the need of a neutralizer. The
// rate of the condensate itself comes from package combustion. It knows nothing
// of the plant language.
//
// Units are SI.
package condensate

import (
	"math"

	"example.org/tundish/check/calc/within"
	"example.org/tundish/check/cite"
)

// Sources of the formulas and numbers of this package.
var (
	SourceTrap = cite.Source{
		Work: "hydrostatics of a water seal with 25 mm kept back", Read: cite.Practice,
		Note: "9.81 Pa per mm of water is physics, the 25 mm are practice",
	}
	SourceSeal = cite.Source{
		Work: "seals of condensate traps in trade literature", Read: cite.Practice, Note: "75 mm to an inner foul drain, 38 mm outside with an air break",
	}
	SourceManning = cite.Source{
		Work: "Manning's formula for open channels", Read: cite.Memory, Note: "n 0.011 for plastic pipe, the careful end of 0.009 to 0.011",
	}
	SourceSmallDrain = cite.Source{
		Work: "BS 6798", Clause: "condensate drains to 70 kW", Read: cite.Published, Note: "as quoted: 19 mm bore inside, 30 mm outside or unheated",
	}
	SourceCollector = cite.Source{
		Work: "condensate collectors of cascades in trade literature", Read: cite.Practice, Note: "40 mm plastic or larger",
	}
	SourceFall = cite.Source{
		Work: "fall of condensate drains", Read: cite.Practice, Note: "45 mm/m, 2.5 degrees",
	}
	SourceNeutralizer = cite.Source{
		Work: "DWA-A 251", Clause: "abstract", Read: cite.Published,
		Note: "German practice, taken as good practice elsewhere: above 200 kW always, 25 to 200 kW unless diluted 25 times with domestic waste water",
	}
)

// KeptBack is the part of a seal in m that is not counted on, for what dries out and
// moves; common practice, in SourceTrap.
const KeptBack = 0.025

const (
	waterGravity = 9.81e3 // Pa per m of water; source: SourceTrap
	mostSeal     = 1.0    // m

	// LeastSealInside and LeastSealOutside are the least seals in m of a trap
	// to an inner foul drain and to an outer one with an air break. Source:
	// SourceSeal.
	LeastSealInside  = 0.075
	LeastSealOutside = 0.038

	// LeastFall is the least fall of a drain in m/m. Source: SourceFall.
	LeastFall = 0.045
)

// HeldPressure is the pressure in Pa that a trap with a seal in m (0 to 1)
// holds, as overpressure or as suction; a seal of 25 mm and less holds none.
//
//	p = (seal - 25 mm) x 9.81 Pa/mm
//
// Source: SourceTrap.
func HeldPressure(seal float64) (float64, error) {
	if err := within.Range("seal of the trap", seal, 0, mostSeal, "m"); err != nil {
		return 0, err
	}
	return math.Max(0, seal-KeptBack) * waterGravity, nil
}

// SealFor is the seal in m that holds a pressure in Pa, over or under that of
// the room, up to 9500 either way.
//
//	seal = |p|/9.81 + 25 mm
//
// Source: SourceTrap.
func SealFor(pressure float64) (float64, error) {
	if err := within.Range("pressure at the trap", pressure, -9500, 9500, "Pa"); err != nil {
		return 0, err
	}
	return math.Abs(pressure)/waterGravity + KeptBack, nil
}

const manning = 0.011 // s/m^(1/3); source: SourceManning

// DrainCapacity is the flow in m3/s of a drain pipe that runs partly full.
//
//	Q = A R^(2/3) sqrt(S) / n,  n = 0.011
//
// Bore in m from 0.01 to 0.5, fall in m/m from 0.001 to 0.2, depth of the
// water to the bore from 0.05 to 0.8 (0.5: half full). Source: SourceManning.
func DrainCapacity(bore, fall, depth float64) (float64, error) {
	if err := within.Range("bore of the drain", bore, 0.01, 0.5, "m"); err != nil {
		return 0, err
	}
	if err := within.Range("fall of the drain", fall, 0.001, 0.2, "m/m"); err != nil {
		return 0, err
	}
	if err := within.Range("depth to the bore", depth, 0.05, 0.8, ""); err != nil {
		return 0, err
	}
	// Angle at the center between the two edges of the water.
	angle := 2 * math.Acos(1-2*depth)
	area := bore * bore / 8 * (angle - math.Sin(angle))
	radius := area / (bore / 2 * angle)
	return area * math.Cbrt(radius*radius) * math.Sqrt(fall) / manning, nil
}

// Place is where a drain runs.
type Place uint8

// The places of a drain.
const (
	Inside  Place = iota
	Outside       // outside or in an unheated place
)

// MostInput is the greatest net heat input in W for which LeastBore answers.
const MostInput = 1e7

// LeastBore is the least bore in m of the drain of so many units with a total
// net heat input in W from 0 to MostInput. Up to 70 kW 19 mm inside and 30 mm
// outside; the collector of several units or of more than 70 kW 40 mm.
// Sources: SourceSmallDrain, SourceCollector.
func LeastBore(netWatts float64, units int, p Place) (float64, cite.Source, error) {
	if err := within.Range("net heat input", netWatts/1000, 0, MostInput/1000, "kW"); err != nil {
		return 0, cite.Source{}, err
	}
	if err := within.Range("number of units", float64(units), 1, 100, ""); err != nil {
		return 0, cite.Source{}, err
	}
	switch {
	case units > 1 || netWatts > 70e3*(1+1e-9):
		return 0.040, SourceCollector, nil
	case p == Outside:
		return 0.030, SourceSmallDrain, nil
	}
	return 0.019, SourceSmallDrain, nil
}

// Need says whether condensate must be neutralized.
type Need uint8

// The three answers.
const (
	NotNeeded      Need = iota // under 25 kW
	UnlessDiluted              // 25 to 200 kW: unless 25 times the volume of domestic waste water goes the same way and the drains stand it
	AlwaysRequired             // above 200 kW
)

// Neutralizer says whether the condensate of a plant of a net heat input in W,
// from 0 to 100 MW, must be neutralized before a public sewer. Source:
// SourceNeutralizer.
func Neutralizer(netWatts float64) (Need, error) {
	if err := within.Range("net heat input", netWatts/1000, 0, 1e5, "kW"); err != nil {
		return 0, err
	}
	switch {
	case netWatts > 200e3*(1+1e-9):
		return AlwaysRequired, nil
	case netWatts >= 25e3*(1-1e-9):
		return UnlessDiluted, nil
	}
	return NotNeeded, nil
}

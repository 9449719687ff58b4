package ventilation

import (
	"errors"
	"math"

	"example.org/tundish/check/calc/within"
)

// Opening is a kind of opening of the US code.
type Opening uint8

// The kinds of openings. All but the single one come in pairs, one within
// 12 in of the top and one within 12 in of the bottom of the room.
const (
	Direct         Opening = iota + 1 // straight to outside or by a vertical duct
	HorizontalDuct                    // by a horizontal duct
	Single                            // one opening straight to outside
	Transfer                          // to another room, each at least 100 in2
)

// ErrOpening is returned for a kind of opening that the code does not hold.
var ErrOpening = errors.New("the code has no such kind of opening")

// LeastDuctIn is the least dimension of an air duct in inches. Source:
// SourceOpenings.
const LeastDuctIn = 3.0

func checkBtu(grossBtuH float64) error {
	return within.Range("gross heat input", grossBtuH, 1, 1e8, "Btu/h")
}

// OpeningArea is the free area in in2 of each opening from the gross heat
// input in Btu/h, 1 to 1e8.
//
//	A = input/4000 direct, /2000 horizontal duct, /3000 single, /1000 transfer
//
// Sources: SourceOpenings, SourceSingleOpening.
func OpeningArea(grossBtuH float64, o Opening) (float64, error) {
	if err := checkBtu(grossBtuH); err != nil {
		return 0, err
	}
	switch o {
	case Direct:
		return grossBtuH / 4000, nil
	case HorizontalDuct:
		return grossBtuH / 2000, nil
	case Single:
		return grossBtuH / 3000, nil
	case Transfer:
		return math.Max(100, grossBtuH/1000), nil
	}
	return 0, ErrOpening
}

// IndoorVolume is the room volume in ft3 that gives the combustion air by
// itself.
//
//	V = 50 ft3 per 1000 Btu/h gross
//
// Source: SourceIndoorVolume.
func IndoorVolume(grossBtuH float64) (float64, error) {
	if err := checkBtu(grossBtuH); err != nil {
		return 0, err
	}
	return grossBtuH / 1000 * 50, nil
}

// KnownInfiltrationVolume is the room volume in ft3 where the air changes per
// hour are known, above 0 to 0.60.
//
//	V = 15/ACH (fan-assisted) or 21/ACH (other) ft3 per 1000 Btu/h gross
//
// Source: SourceKnownInfiltration.
func KnownInfiltrationVolume(grossBtuH, changesPerHour float64, fan bool) (float64, error) {
	if err := checkBtu(grossBtuH); err != nil {
		return 0, err
	}
	if err := within.Range("air changes per hour", changesPerHour, 0.01, 0.60, "1/h"); err != nil {
		return 0, err
	}
	factor := 21.0
	if fan {
		factor = 15
	}
	return factor / changesPerHour * grossBtuH / 1000, nil
}

// USMechanical is the combustion air in ft3/min to be blown in.
//
//	V = 0.35 ft3/min per 1000 Btu/h gross
//
// Source: SourceUSMechanical.
func USMechanical(grossBtuH float64) (float64, error) {
	if err := checkBtu(grossBtuH); err != nil {
		return 0, err
	}
	return 0.35 * grossBtuH / 1000, nil
}

// Louver is what a louver is made of.
type Louver uint8

// The louvers of unknown make.
const (
	MetalLouver Louver = iota + 1
	WoodLouver
)

// ErrLouver is returned for a louver of unknown material.
var ErrLouver = errors.New("the free area of a louver is known for metal and for wood only")

// LouverUK is the free share of a louver's face where nothing better is known
// in the UK. Source: SourceLouverUK.
const LouverUK = 0.5

// FreeArea is the free area of a louver of unknown make, in the unit of its
// face.
//
//	free = 0.75 face (metal), 0.25 face (wood)
//
// Source: SourceLouver.
func FreeArea(face float64, l Louver) (float64, error) {
	if err := within.Range("face of the louver", face, 0, 1e7, ""); err != nil {
		return 0, err
	}
	switch l {
	case MetalLouver:
		return 0.75 * face, nil
	case WoodLouver:
		return 0.25 * face, nil
	}
	return 0, ErrLouver
}

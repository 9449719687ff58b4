package flue

import (
	"math"

	"example.org/tundish/check/calc/within"
)

// Thresholds of approval in W.
const (
	// CouncilApproval is the gross heat input of all units on one chimney from
	// which the council approves the chimney height. Source: SourceCleanAir.
	CouncilApproval = 366.4e3
	// HealthApproval is the net heat input of horizontal terminals together
	// above which Environmental Health must agree. Source: SourceApprovals.
	HealthApproval = 135e3
	// WallLimit is the net heat input above which horizontal terminals need
	// the approval of a chimney; 366.4 kW gross at 1.1. Source: SourceTerminalUP10.
	WallLimit = 333e3
)

// NeedsCouncil reports whether the chimney height needs the council's approval
// at a gross heat input in W of the units on one chimney. Source:
// SourceCleanAir.
func NeedsCouncil(grossWatts float64) bool { return grossWatts >= CouncilApproval*(1-1e-9) }

// NeedsHealth reports whether horizontal terminals need the consent of
// Environmental Health at a net heat input in W. Source: SourceApprovals.
func NeedsHealth(netWatts float64) bool { return netWatts > HealthApproval*(1+1e-9) }

// UncorrectedHeight is the chimney height in m for gas before the buildings
// around it count.
//
//	U = 1.36 Q^0.6 (1 - 4.7e-5 Q^1.69), Q gross in MW
//
// The gross heat input holds from 150 kW to 30 MW. Source: SourceMemorandum.
func UncorrectedHeight(grossWatts float64) (float64, error) {
	if err := within.Range("gross heat input of the chimney", grossWatts/1e6, 0.15, 30, "MW"); err != nil {
		return 0, err
	}
	q := grossWatts / 1e6
	return 1.36 * math.Pow(q, 0.6) * (1 - 4.7e-5*math.Pow(q, 1.69)), nil
}

// CorrectedHeight is the chimney height in m beside a wide building of a
// height in m, 0 to 100, the tallest within five uncorrected heights.
//
//	U > 2.5 H: C = U;  otherwise C = H + 0.6 U
//
// The outlet must also stand 3 m above any area near it that people reach, and
// above every part of an attached building within 5 U. Source:
// SourceMemorandum.
func CorrectedHeight(uncorrected, building float64) (float64, error) {
	if err := within.Range("uncorrected height", uncorrected, 0.1, 50, "m"); err != nil {
		return 0, err
	}
	if err := within.Range("height of the building", building, 0, 100, "m"); err != nil {
		return 0, err
	}
	if uncorrected > 2.5*building {
		return uncorrected, nil
	}
	return building + 0.6*uncorrected, nil
}

package valve

import (
	"errors"

	"example.org/tundish/check/calc/within"
)

// Unvented is one line of the discharge table for unvented hot-water storage.
// It is not a rule for the safety valves of heating units.
type Unvented struct {
	Outlet string  // thread of the valve's outlet
	D1     int     // mm, pipe from the valve to the tundish
	D2     int     // mm, pipe from the tundish on
	Limit  float64 // m, greatest counted length of D2
	Elbow  float64 // m that each elbow or bend counts
}

var unvented = [...]Unvented{
	{"G1/2", 15, 22, 9, 0.8},
	{"G1/2", 15, 28, 18, 1.0},
	{"G1/2", 15, 35, 27, 1.4},
	{"G3/4", 22, 28, 9, 1.0},
	{"G3/4", 22, 35, 18, 1.4},
	{"G3/4", 22, 42, 27, 1.7},
	{"G1", 28, 35, 9, 1.4},
	{"G1", 28, 42, 18, 1.7},
	{"G1", 28, 54, 27, 2.3},
}

// UnventedTable returns the discharge table for unvented hot-water storage.
// Source: SourceUnvented.
func UnventedTable() []Unvented { return append([]Unvented(nil), unvented[:]...) }

// Tundish distances of the discharge of unvented storage, m. Source:
// SourceUnvented.
const (
	TundishMost     = 0.6 // from the valve to the tundish
	TundishStraight = 0.3 // straight down below it, at least
)

// ErrUnventedOutlet is returned for an outlet that the table does not hold.
var ErrUnventedOutlet = errors.New("the discharge table of unvented storage holds outlets of G1/2, G3/4 and G1 with three pipe sizes each")

// ErrUnventedLong is returned where the largest pipe of the table is too long.
var ErrUnventedLong = errors.New("the discharge pipe is longer than the table of unvented storage allows for its largest size")

func checkRun(length float64, elbows int) error {
	if err := within.Range("length of the discharge pipe", length, 0, 1000, "m"); err != nil {
		return err
	}
	return within.Range("elbows of the discharge pipe", float64(elbows), 0, 200, "")
}

// Counted is the length of the pipe below the tundish with its elbows, 0 to
// 1000 m and 0 to 200 elbows. It passes up to Limit.
//
//	counted = length + elbows x length of an elbow
//
// Source: SourceUnvented.
func (u *Unvented) Counted(length float64, elbows int) (float64, error) {
	if err := checkRun(length, elbows); err != nil {
		return 0, err
	}
	return length + float64(elbows)*u.Elbow, nil
}

// UnventedLine finds the line of an outlet thread and a pipe D2 in mm.
func UnventedLine(outlet string, d2 int) (Unvented, error) {
	for i := range unvented {
		if unvented[i].Outlet == outlet && unvented[i].D2 == d2 {
			return unvented[i], nil
		}
	}
	return Unvented{}, ErrUnventedOutlet
}

// UnventedFor is the line with the smallest pipe that passes, with the counted
// length. Source: SourceUnvented.
func UnventedFor(outlet string, length float64, elbows int) (Unvented, float64, error) {
	if err := checkRun(length, elbows); err != nil {
		return Unvented{}, 0, err
	}
	err := ErrUnventedOutlet
	for i := range unvented {
		u := &unvented[i]
		if u.Outlet != outlet {
			continue
		}
		err = ErrUnventedLong
		// The guard lets a length that meets the limit pass.
		if counted := length + float64(elbows)*u.Elbow; counted <= u.Limit*(1+1e-9) {
			return *u, counted, nil
		}
	}
	return Unvented{}, 0, err
}

var nominals = [...]int{15, 20, 25, 32, 40, 50, 65, 80, 100, 125, 150}

// ErrDischargeLong is returned for a blow-off line beyond both steps of the
// rule.
var ErrDischargeLong = errors.New("a blow-off line longer than 4 m or with more than 3 bends is beyond the sizes by rule")

// NextSize is the nominal size a number of steps above a nominal size of 15 to
// 150, in DN.
func NextSize(nominal, steps int) (int, error) {
	for i, n := range nominals {
		if n == nominal && steps >= 0 && i+steps < len(nominals) {
			return nominals[i+steps], nil
		}
	}
	return 0, &within.Error{Name: "nominal size", Value: float64(nominal), Low: 15, High: 150, Unit: "(the larger size must be in the series)"}
}

// BlowOff is the nominal size of the blow-off line of a heating safety valve by
// the nominal size of the valve's inlet, the length in m and the bends.
//
//	one size up to 2 m and 2 bends, two sizes up to 4 m and 3 bends
//
// A longer line is an error. Source: SourceDischarge.
func BlowOff(inlet int, length float64, bends int) (int, error) {
	if err := checkRun(length, bends); err != nil {
		return 0, err
	}
	const guard = 1 + 1e-9
	switch {
	case length <= 2*guard && bends <= 2:
		return NextSize(inlet, 1)
	case length <= 4*guard && bends <= 3:
		return NextSize(inlet, 2)
	}
	return 0, ErrDischargeLong
}

// CommonDischarge is the nominal size of a discharge pipe that several valves
// share: one size over the largest of them. Source: SourceCommon.
func CommonDischarge(largest int) (int, error) { return NextSize(largest, 1) }

package stability

import (
	"math"

	"example.org/tundish/check/calc/within"
)

// Zone is how high the hands are in a lift.
type Zone uint8

// The zones from the head down.
const (
	Head Zone = iota + 1 // between shoulder and head height
	Shoulder
	Elbow // waist to elbow, where most is allowed
	Knuckle
	LowerLeg
)

// lifts holds kg by zone: men close and far, women close and far.
var lifts = [...][4]float64{
	Head:     {10, 5, 7, 3},
	Shoulder: {20, 10, 13, 7},
	Elbow:    {25, 15, 16, 10},
	Knuckle:  {20, 10, 13, 7},
	LowerLeg: {10, 5, 7, 3},
}

// LiftGuide is the guideline weight in kg for one person who lifts with the
// hands in a zone, close to the body or at arm's length. Source: SourceLift.
func LiftGuide(z Zone, far, women bool) (float64, error) {
	if z < Head || z > LowerLeg {
		return 0, &within.Error{Name: "zone of the lift", Value: float64(z), Low: float64(Head), High: float64(LowerLeg)}
	}
	i := 0
	if far {
		i++
	}
	if women {
		i += 2
	}
	return lifts[z][i], nil
}

// TeamLift is the guideline weight in kg of one to three people from the
// guideline of one of them, 1 to 50 kg.
//
//	two: 2/3 of the sum, three: 1/2 of the sum
//
// More people are an error: they are in each other's way. Source: SourceTeam.
func TeamLift(one float64, people int) (float64, error) {
	if err := within.Range("guideline of one person", one, 1, 50, "kg"); err != nil {
		return 0, err
	}
	switch people {
	case 1:
		return one, nil
	case 2:
		return one * 2 * 2 / 3, nil
	case 3:
		return one * 3 / 2, nil
	}
	return 0, &within.Error{Name: "people of a lift", Value: float64(people), Low: 1, High: 3}
}

// Lift is one lift by the equation of NIOSH.
type Lift struct {
	Reach     float64 // cm from the ankles to the hands, 0 to 63; below 25 counts as 25
	Height    float64 // cm of the hands above the floor at the start, 0 to 175
	Travel    float64 // cm that the load goes up, 0 to 175; below 25 counts as 25
	Turn      float64 // degrees of twist, 0 to 135
	Frequency float64 // multiplier of frequency and duration, 0 to 1
	Coupling  float64 // multiplier of the grip, 0.9 to 1
}

// RecommendedWeight is the recommended weight limit in kg.
//
//	RWL = 23 (25/H) (1 - 0.003 |V-75|) (0.82 + 4.5/D) (1 - 0.0032 A) FM CM
//
// Source: SourceNIOSH.
func (l *Lift) RecommendedWeight() (float64, error) {
	if err := within.Range("reach", l.Reach, 0, 63, "cm"); err != nil {
		return 0, err
	}
	if err := within.Range("height of the hands", l.Height, 0, 175, "cm"); err != nil {
		return 0, err
	}
	if err := within.Range("travel", l.Travel, 0, 175, "cm"); err != nil {
		return 0, err
	}
	if err := within.Range("turn", l.Turn, 0, 135, "deg"); err != nil {
		return 0, err
	}
	if err := within.Range("frequency multiplier", l.Frequency, 0, 1, ""); err != nil {
		return 0, err
	}
	if err := within.Range("coupling multiplier", l.Coupling, 0.9, 1, ""); err != nil {
		return 0, err
	}
	reach, travel := math.Max(l.Reach, 25), math.Max(l.Travel, 25)
	return 23 * (25 / reach) * (1 - 0.003*math.Abs(l.Height-75)) * (0.82 + 4.5/travel) *
		(1 - 0.0032*l.Turn) * l.Frequency * l.Coupling, nil
}

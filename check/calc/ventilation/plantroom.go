// Package ventilation computes the air a plant room needs: openings and fans
// by the UK tables, the US code, and ducts with gas pipes. It knows nothing of
// the plant language.
//
// Units are SI and heat inputs net unless an argument says otherwise; areas are
// free areas, not those of a louver's face.
package ventilation

import (
	"errors"
	"math"

	"example.org/tundish/check/calc/within"
)

// Case is how the units stand in their room.
type Case uint8

// The cases of the table for natural ventilation straight to outside.
const (
	RoomSealedInRoom           Case = iota + 1 // room-sealed units in a plant room
	OpenFluedInRoom                            // open-flued units in a plant room
	OpenFluedInEnclosure                       // open-flued units in an enclosure, air straight from outside
	RoomSealedInEnclosure                      // room-sealed units in an enclosure, air straight from outside
	RoomSealedInEnclosureInner                 // room-sealed units in an enclosure, air through a room
)

// ErrCase is returned for a case that the table does not hold.
var ErrCase = errors.New("the ventilation table has no such case of units and room")

// Areas are the free areas of openings in m2.
type Areas struct {
	High, Low float64
}

const (
	cm2       = 1e-4 // m2
	leastUK   = 70.0 // kW net
	mostUK    = 1800.0
	perHour   = 1.0 / 3600
	summerSun = 0.5 // share of summer use from which more air is due
)

// summerStep counts the additions for summer use: none below half, one below
// three quarters, two from there.
func summerStep(share float64) float64 {
	switch {
	case share < summerSun:
		return 0
	case share < 0.75:
		return 1
	}
	return 2
}

func checkPlantRoom(netWatts, summer float64) error {
	if err := within.Range("net heat input of the plant room", netWatts/1000, leastUK, mostUK, "kW"); err != nil {
		return err
	}
	return within.Range("share of summer use", summer, 0, 1, "")
}

// Natural is the free area of the high and the low openings of a plant room.
//
//	A = (factor + summer addition) x kW net
//
// Factors in cm2/kW, high and low: room-sealed in a room 2 and 2; open-flued in
// a room 2 and 4, in an enclosure 5 and 10; room-sealed in an enclosure 5 and
// 5, through a room 10 and 10. Summer use adds 1 from 50 %, 2 from 75 % of
// the time. The net heat input holds from 70 kW to 1.8 MW; summer use is a
// share from 0 to 1. Source: SourceBS6644.
func Natural(netWatts float64, c Case, summer float64) (Areas, error) {
	if err := checkPlantRoom(netWatts, summer); err != nil {
		return Areas{}, err
	}
	var a Areas // cm2/kW
	switch c {
	case RoomSealedInRoom:
		a = Areas{2, 2}
	case OpenFluedInRoom:
		a = Areas{2, 4}
	case OpenFluedInEnclosure:
		a = Areas{5, 10}
	case RoomSealedInEnclosure:
		a = Areas{5, 5}
	case RoomSealedInEnclosureInner:
		a = Areas{10, 10}
	default:
		return Areas{}, ErrCase
	}
	more, kW := summerStep(summer), netWatts/1000
	return Areas{High: (a.High + more) * kW * cm2, Low: (a.Low + more) * kW * cm2}, nil
}

// Flows are the air flows of a mechanically ventilated room in m3/s.
type Flows struct {
	Inlet        float64 // least inlet
	Extract      float64 // extract at that inlet
	LeastExtract float64
	MostExtract  float64 // above it the room may go under pressure
}

// Mechanical is the air of a plant room with fans. A fan may never only
// extract.
//
//	inlet = (2.6 + summer) m3/h x kW net, with draught diverters 2.8
//	inlet - extract = 1.35 +- 0.18 m3/h x kW net, with draught diverters 2.07 +- 0.18
//
// Summer use adds 0.72 from 50 %, 1.44 from 75 % of the time to inlet and
// extract alike. The net heat input holds from 70 kW to 1.8 MW. Sources:
// SourceBS6644, SourceSummer.
func Mechanical(netWatts float64, diverters bool, summer float64) (Flows, error) {
	if err := checkPlantRoom(netWatts, summer); err != nil {
		return Flows{}, err
	}
	inlet, less := 2.6, 1.35 // m3/h per kW
	if diverters {
		inlet, less = 2.8, 2.07
	}
	const play = 0.18
	inlet += 0.72 * summerStep(summer)
	scale := netWatts / 1000 * perHour
	return Flows{
		Inlet:        inlet * scale,
		Extract:      (inlet - less) * scale,
		LeastExtract: (inlet - less - play) * scale,
		MostExtract:  (inlet - less + play) * scale,
	}, nil
}

// Cooler is what each side needs more to keep the room some kelvin (0 to 20)
// cooler: area of each opening in m2, or flow of each fan in m3/s.
//
//	A = 0.2 cm2/(kW.K), V = 0.15 m3/(h.kW.K)
//
// The net heat input holds from 70 kW to 1.8 MW. Source: SourceCooler.
func Cooler(netWatts, kelvin float64) (area, flow float64, err error) {
	if err := checkPlantRoom(netWatts, 0); err != nil {
		return 0, 0, err
	}
	if err := within.Range("reduction of the room temperature", kelvin, 0, 20, "K"); err != nil {
		return 0, 0, err
	}
	scale := netWatts / 1000 * kelvin
	return 0.2 * cm2 * scale, 0.15 * perHour * scale, nil
}

// TightRoom is the free area of each of a high and a low opening for
// room-sealed units in a room of under 0.5 air changes per hour and under
// 1500 m3; other rooms need none by this clause.
//
//	A = 2 cm2 x kW net
//
// Air changes from 0 to 100 per hour, volume in m3 from 1 to 100 000. Source:
// SourceTightRoom.
func TightRoom(netWatts, changesPerHour, volume float64) (Areas, error) {
	if err := checkPlantRoom(netWatts, 0); err != nil {
		return Areas{}, err
	}
	if err := within.Range("air changes per hour", changesPerHour, 0, 100, "1/h"); err != nil {
		return Areas{}, err
	}
	if err := within.Range("volume of the room", volume, 1, 1e5, "m3"); err != nil {
		return Areas{}, err
	}
	if changesPerHour >= 0.5 || volume >= 1500 {
		return Areas{}, nil
	}
	a := 2 * cm2 * netWatts / 1000
	return Areas{High: a, Low: a}, nil
}

// Germany is the free area in m2 of the opening of a heating room from 50 kW
// to 2 MW.
//
//	A = 150 cm2 + 2 cm2 x (kW - 50)
//
// Source: SourceGermany.
func Germany(watts float64) (float64, error) {
	if err := within.Range("heat output of the room", watts/1000, 50, 2000, "kW"); err != nil {
		return 0, err
	}
	return (150 + 2*(watts/1000-50)) * cm2, nil
}

// SmallCase is how open-flued units up to 70 kW net stand.
type SmallCase uint8

// The cases of BS 5440-2.
const (
	SmallRoom             SmallCase = iota + 1 // open-flued in a room, one opening
	SmallCompartment                           // open-flued in a compartment, air straight from outside
	SmallCompartmentInner                      // open-flued in a compartment, air through a room
)

// Small is the free area for open-flued units up to 70 kW net; a room has one
// opening, given as Low, at any height.
//
//	room: 5 cm2 x (kW - 7);  compartment: high 5, low 10 cm2/kW straight from
//	outside, 10 and 20 through a room
//
// Source: SourceBS5440.
func Small(netWatts float64, c SmallCase) (Areas, error) {
	if err := within.Range("net heat input", netWatts/1000, 0, leastUK, "kW"); err != nil {
		return Areas{}, err
	}
	kW := netWatts / 1000
	switch c {
	case SmallRoom:
		return Areas{Low: 5 * cm2 * math.Max(0, kW-7)}, nil
	case SmallCompartment:
		return Areas{High: 5 * cm2 * kW, Low: 10 * cm2 * kW}, nil
	case SmallCompartmentInner:
		return Areas{High: 10 * cm2 * kW, Low: 20 * cm2 * kW}, nil
	}
	return Areas{}, ErrCase
}

// Duct is the free area in m2 of each of the high and the low opening of a
// duct that holds gas pipes, from its cross-section in m2, up to 100.
//
//	under 0.01: none;  to 0.05: the section;  to 7.5: 0.05 m2;  above: section/150
//
// Source: SourceDuct.
func Duct(section float64) (float64, error) {
	if err := within.Range("cross-section of the duct", section, 1e-6, 100, "m2"); err != nil {
		return 0, err
	}
	switch {
	case section < 0.01:
		return 0, nil
	case section <= 0.05:
		return section, nil
	case section <= 7.5:
		return 0.05, nil
	}
	return section / 150, nil
}

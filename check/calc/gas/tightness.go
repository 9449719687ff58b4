package gas

import (
	"errors"
	"math"

	"example.org/tundish/check/calc/within"
)

// Medium is what a pipe is tested with.
type Medium uint8

// The test media.
const (
	TestNaturalGas Medium = iota + 1
	TestAir
)

// Gauge readable movements in Pa. Source: SourceTightness.
const (
	MovementWaterGauge = 50.0 // 0.5 mbar
	MovementElectronic = 10.0 // 0.1 mbar
)

// ErrMedium is returned for a test medium without a factor.
var ErrMedium = errors.New("the tightness test has a factor for natural gas and for air only")

// TightnessTime is the length in seconds of the tightness test of new
// pipework: whole minutes, rounded up, at least two.
//
//	TTD [min] = GRM [mbar] x IV [m3] x F1,  F1 = 42 natural gas, 67 air
//
// The movement that the gauge shows holds from 1 to 1000 Pa, the installation
// volume from 0 to 1000 m3. Source: SourceTightness.
func TightnessTime(movement, volume float64, medium Medium) (float64, error) {
	if err := within.Range("gauge readable movement", movement, 1, 1000, "Pa"); err != nil {
		return 0, err
	}
	if err := within.Range("installation volume", volume, 0, mostVolume, "m3"); err != nil {
		return 0, err
	}
	var factor float64 // F1, min/(mbar.m3)
	switch medium {
	case TestNaturalGas:
		factor = 42
	case TestAir:
		factor = 67
	default:
		return 0, ErrMedium
	}
	// The guard keeps a whole minute whole.
	minutes := math.Ceil(movement/100*volume*factor - 1e-9)
	return 60 * math.Max(2, minutes), nil
}

// USTestTime is the length in s of the pressure test of new pipework in the US.
//
//	1/2 h by 500 ft3 or a part of it; 10 min under 10 ft3; never over 24 h
//
// The pipe volume in m3 holds from 0 to 1000. Source: SourceUSTest.
func USTestTime(volume float64) (float64, error) {
	if err := within.Range("pipe volume", volume, 0, mostVolume, "m3"); err != nil {
		return 0, err
	}
	const ft3 = 0.3048 * 0.3048 * 0.3048
	if volume < 10*ft3*(1-1e-9) {
		return 10 * 60, nil
	}
	return math.Min(24*3600, 1800*math.Ceil(volume/(500*ft3)-1e-9)), nil
}

// StabilizationTime is the time in seconds that the pressure is left to settle
// before the test: the test's own time, at least 15 minutes. Source:
// SourceTightness.
func StabilizationTime(test float64) (float64, error) {
	if err := within.Range("time of the test", test, 0, 1e7, "s"); err != nil {
		return 0, err
	}
	return math.Max(15*60, test), nil
}

const (
	purgeShare    = 1.5  // of the installation volume; source: SourcePurge
	purgeCycles   = 5    // cyclic volumes of a diaphragm meter; source: SourcePurge
	purgeVelocity = 0.6  // m/s; source: SourcePurgeRate
	mostPurgeBore = 0.16 // m, DN150 with its bore of 155 mm
)

// PurgeVolume is the volume in m3 to let out so that the pipes hold no air.
//
//	PV = 1.5 x IV + 5 x cyclic volume
//
// Volumes in m3, from 0 to 1000; without a diaphragm meter the cyclic volume
// is 0. Source: SourcePurge.
func PurgeVolume(volume, cyclic float64) (float64, error) {
	if err := within.Range("installation volume", volume, 0, mostVolume, "m3"); err != nil {
		return 0, err
	}
	if err := within.Range("cyclic volume of the meter", cyclic, 0, 1, "m3"); err != nil {
		return 0, err
	}
	return purgeShare*volume + purgeCycles*cyclic, nil
}

// PurgeRate is the least purge flow in m3/s through a bore in m, so that gas
// and air do not lie in layers.
//
//	Q = 0.6 m/s x pi/4 D^2
//
// Holds up to DN150. Source: SourcePurgeRate.
func PurgeRate(bore float64) (float64, error) {
	if err := within.Range("bore", bore, leastBore, mostPurgeBore, "m"); err != nil {
		return 0, err
	}
	return purgeVelocity * math.Pi / 4 * bore * bore, nil
}

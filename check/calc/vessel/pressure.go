package vessel

import (
	"math"

	"example.org/tundish/check/calc/within"
)

// BarPerMeter is the pressure of a meter of cold water in bar. Source:
// SourceStatic.
const BarPerMeter = 0.0980665

// Static is the pressure in bar of the water above the vessel, from the height
// of the highest point above it in m, 0 to 300.
//
//	p = 0.0981 h
//
// Source: SourceStatic.
func Static(height float64) (float64, error) {
	if err := within.Range("height above the vessel", height, 0, 300, "m"); err != nil {
		return 0, err
	}
	return BarPerMeter * height, nil
}

// PreferredPrecharge is the least precharge in bar that is preferred whatever
// the height. Source: SourcePrecharge.
const PreferredPrecharge = 0.7

// PrechargeMargin is the margin of the precharge over the static pressure in
// bar. Source: SourcePrecharge.
const PrechargeMargin = 0.3

// Precharge is the least precharge in bar for a static pressure of 0 to 25 bar.
//
//	p0 = pst + 0.3
//
// Source: SourcePrecharge.
func Precharge(static float64) (float64, error) {
	if err := within.Range("static pressure", static, 0, 25, "bar"); err != nil {
		return 0, err
	}
	return static + PrechargeMargin, nil
}

// EndPressure is the greatest working pressure in bar under a safety valve set
// at 1 to 25 bar.
//
//	pe = psv - 0.5 to 5 bar, 0.9 psv above
//
// Source: SourceEN12828.
func EndPressure(safetyValve float64) (float64, error) {
	if err := within.Range("set pressure of the safety valve", safetyValve, 1, 25, "bar"); err != nil {
		return 0, err
	}
	if safetyValve <= 5 {
		return safetyValve - 0.5, nil
	}
	return 0.9 * safetyValve, nil
}

// AntiFlashMargin is the margin in K against flashing. Source:
// SourceAntiFlash.
const AntiFlashMargin = 17.0

// AntiFlashTemperature is the temperature in degC whose vapor pressure the
// water must be kept above, from the flow temperature, 20 to 110 degC, and the
// rise through the plant in K that counts for modular plant, 0 to 60.
//
//	t = flow + 17 + rise
//
// Source: SourceAntiFlash.
func AntiFlashTemperature(flow, rise float64) (float64, error) {
	if err := within.Range("flow temperature", flow, 20, 110, "degC"); err != nil {
		return 0, err
	}
	if err := within.Range("rise through the plant", rise, 0, 60, "K"); err != nil {
		return 0, err
	}
	return flow + AntiFlashMargin + rise, nil
}

// AntiFlash is the least pressure in bar gauge at the hottest high point, from
// the vapor pressure in Pa absolute at AntiFlashTemperature, 600 to 1.6e6, and
// the air pressure in Pa, 5e4 to 1.1e5.
//
//	p = max(psat - pair, 0.2)
//
// Source: SourceAntiFlash.
func AntiFlash(vapor, air float64) (float64, error) {
	if err := within.Range("vapor pressure", vapor, 600, 1.6e6, "Pa"); err != nil {
		return 0, err
	}
	if err := within.Range("air pressure", air, 5e4, 1.1e5, "Pa"); err != nil {
		return 0, err
	}
	return math.Max((vapor-air)/1e5, 0.2), nil
}

package water

import "example.org/tundish/check/calc/within"

// Expansion is the volume that water gains when it is heated from cold to hot
// (degC), by the volume it had cold; pressures are absolute in Pa. Vessel and
// pipes are taken as rigid.
//
//	e = rho(cold)/rho(hot) - 1
//
// Source: SourceIF97 for the densities. Hot must not be colder than cold.
func Expansion(cold, hot, coldPressure, hotPressure float64) (float64, error) {
	if err := within.Range("hot temperature", hot, cold, 200, "degC"); err != nil {
		return 0, err
	}
	c, err := Density(cold, coldPressure)
	if err != nil {
		return 0, err
	}
	h, err := Density(hot, hotPressure)
	if err != nil {
		return 0, err
	}
	return c/h - 1, nil
}

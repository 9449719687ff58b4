package flue

import "example.org/tundish/check/calc/within"

// Column is a flue of one temperature in still air.
type Column struct {
	Height      float64 // m, 0 to 300; a fall does not draw
	Flue        float64 // degC, mean, -60 to 600
	Outside     float64 // degC, -60 to 60
	Pressure    float64 // of the outside air, Pa, see Pressure
	GasConstant float64 // of the flue gas, J/(kg.K), 250 to 350; AirGasConstant for air
}

// Draught is the buoyancy of the column in Pa; it is negative when the flue is
// colder than the outside air.
//
//	dp = g H (rho_outside - rho_flue),  rho = p/(R T)
//
// Source: SourceDraught.
func (c *Column) Draught() (float64, error) {
	if err := within.Range("height", c.Height, 0, 300, "m"); err != nil {
		return 0, err
	}
	if err := checkFlue(c.Flue); err != nil {
		return 0, err
	}
	if err := checkOutside(c.Outside); err != nil {
		return 0, err
	}
	if err := checkPressure(c.Pressure); err != nil {
		return 0, err
	}
	if err := within.Range("gas constant", c.GasConstant, 250, 350, "J/(kg.K)"); err != nil {
		return 0, err
	}
	return gravity * c.Height * (density(c.Pressure, c.Outside, AirGasConstant) - density(c.Pressure, c.Flue, c.GasConstant)), nil
}

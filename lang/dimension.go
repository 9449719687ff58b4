package lang

// Dimension is what a quantity measures. Several dimensions share their base
// units (a temperature and a temperature difference, a ratio and a count) and
// are still kept apart, because a designer keeps them apart.
type Dimension uint8

// The dimensions, with the SI unit in which values are held.
const (
	NoDimension          Dimension = iota
	Count                          // 1: off, unit, phase, core
	Ratio                          // 1: ratio, %, ppm by volume
	Length                         // m
	Area                           // m2
	Volume                         // m3
	Mass                           // kg
	Time                           // s
	Temperature                    // degC
	TempDiff                       // K
	Power                          // W
	Energy                         // J
	Pressure                       // Pa, gauge unless a name says absolute; also floor load
	PressureGrad                   // Pa/m
	VolumeFlow                     // m3/s
	MassFlow                       // kg/s
	Velocity                       // m/s
	HeatValue                      // J/m3, calorific value by volume
	Angle                          // rad
	Slope                          // m/m: mm/m, %, in/ft; a slot may take an Angle for it
	Conductivity                   // W/(m K)
	Transmittance                  // W/(m2 K)
	Conductance                    // W/K
	SpecificHeat                   // J/(kg K)
	Density                        // kg/m3
	Viscosity                      // Pa s
	HeatLossPerRun                 // W/m
	Voltage                        // V
	Current                        // A
	Force                          // N
	Hardness                       // mol/m3 of alkaline earths
	ElectricConductivity           // S/m
	Acidity                        // pH
	ExplosiveLimit                 // 1, fraction of the lower explosive limit
	Concentration                  // kg/m3: mg/l
	VolumePerPower                 // m3/W: l/kW
	AreaPerPower                   // m2/W
	FlowPerPower                   // m3/(s W)
	FlowCoefficient                // m3/s at 1 bar: Kv and Cv
	Sound                          // dB(A), held as written
	Frequency                      // Hz: also starts per hour
	Torque                         // N m
	Derived                        // outcome of an expression with no name of its own
	lastDimension
)

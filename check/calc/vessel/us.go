package vessel

import "example.org/tundish/check/calc/within"

// Expansion of pipe materials per degF. Source: SourceASHRAE.
const (
	USSteel  = 6.5e-6
	USCopper = 9.5e-6
)

// USWater is the water of a US tank sum.
type USWater struct {
	Gallons    float64 // system volume, gal, 1 to 1e6
	ColdVolume float64 // specific volume at the lower temperature, ft3/lb, 0.0159 to 0.0175
	HotVolume  float64 // at the higher temperature
	Rise       float64 // degF between them, 1 to 250
	Linear     float64 // expansion of the pipes per degF, 0 to 2e-5
}

// swell is the net expansion over the system volume.
func (w *USWater) swell() (float64, error) {
	if err := within.Range("system volume", w.Gallons, 1, 1e6, "gal"); err != nil {
		return 0, err
	}
	if err := within.Range("specific volume cold", w.ColdVolume, 0.0159, 0.0175, "ft3/lb"); err != nil {
		return 0, err
	}
	if err := within.Range("specific volume hot", w.HotVolume, w.ColdVolume, 0.0175, "ft3/lb"); err != nil {
		return 0, err
	}
	if err := within.Range("temperature rise", w.Rise, 1, 250, "degF"); err != nil {
		return 0, err
	}
	if err := within.Range("expansion of the pipes", w.Linear, 0, 2e-5, "1/degF"); err != nil {
		return 0, err
	}
	net := w.HotVolume/w.ColdVolume - 1 - 3*w.Linear*w.Rise
	return net, within.Range("expansion of water less that of the pipes", net, 1e-5, 0.1, "")
}

func checkPsia(name string, v, low float64) error {
	return within.Range(name, v, low, 500, "psia")
}

// USDiaphragm is the volume in gal of a diaphragm tank, with the pressure at the
// lower and the higher temperature in psi absolute, 10 to 500.
//
//	Vt = Vs [(v2/v1 - 1) - 3 a dt]/(1 - P1/P2)
//
// Source: SourceASHRAE.
func USDiaphragm(w USWater, low, high float64) (float64, error) {
	net, err := w.swell()
	if err != nil {
		return 0, err
	}
	if err := checkPsia("pressure cold", low, 10); err != nil {
		return 0, err
	}
	if err := checkPsia("pressure hot", high, low*1.01); err != nil {
		return 0, err
	}
	return w.Gallons * net / (1 - low/high), nil
}

// USClosed is the volume in gal of a tank whose air cushion touches the water
// and was at the air's pressure before filling; pressures in psi absolute.
//
//	Vt = Vs [(v2/v1 - 1) - 3 a dt]/(Pa/P1 - Pa/P2)
//
// Source: SourceASHRAE.
func USClosed(w USWater, air, low, high float64) (float64, error) {
	net, err := w.swell()
	if err != nil {
		return 0, err
	}
	if err := within.Range("air pressure", air, 8, 16, "psia"); err != nil {
		return 0, err
	}
	if err := checkPsia("pressure cold", low, air); err != nil {
		return 0, err
	}
	if err := checkPsia("pressure hot", high, low*1.01); err != nil {
		return 0, err
	}
	return w.Gallons * net / (air/low - air/high), nil
}

// USCode is the volume in gal of a closed tank by the formula of US codes: mean
// water temperature of 160 to 280 degF, pressures in psi absolute of the air,
// when filled and when hot.
//
//	Vt = (0.00041 t - 0.0466) Vs/(Pa/Pf - Pa/Po)
//
// Source: SourceUSCode.
func USCode(gallons, mean, air, fill, hot float64) (float64, error) {
	if err := within.Range("system volume", gallons, 1, 1e6, "gal"); err != nil {
		return 0, err
	}
	if err := within.Range("mean water temperature", mean, 160, 280, "degF"); err != nil {
		return 0, err
	}
	if err := within.Range("air pressure", air, 8, 16, "psia"); err != nil {
		return 0, err
	}
	if err := checkPsia("fill pressure", fill, air); err != nil {
		return 0, err
	}
	if err := checkPsia("hot pressure", hot, fill*1.01); err != nil {
		return 0, err
	}
	return (0.00041*mean - 0.0466) * gallons / (air/fill - air/hot), nil
}

// USMost is the greatest working pressure in psi gauge under a relief valve of
// 5 to 160 psi.
//
//	90 % of the setting
//
// Source: SourceUSCode.
func USMost(relief float64) (float64, error) {
	if err := within.Range("set pressure of the relief valve", relief, 5, 160, "psi"); err != nil {
		return 0, err
	}
	return 0.9 * relief, nil
}

package valve

import (
	"math"

	"example.org/tundish/check/calc/within"
)

const (
	leastKv = 1e-4 // m3/h
	mostKv  = 1e5
)

func checkWater(drop, density float64) error {
	if err := within.Range("pressure drop", drop, 0.1, 1e7, "Pa"); err != nil {
		return err
	}
	return within.Range("density", density, 700, 1200, "kg/m3")
}

func checkFlow(flow float64) error {
	return within.Range("flow", flow, 0, 1e5, "m3/h")
}

// WaterKv is the flow coefficient in m3/h that passes a flow in m3/h at a drop
// of 0.1 Pa to 100 bar.
//
//	Kv = V sqrt(rho/1000/dp), dp in bar
//
// The density is in kg/m3, 700 to 1200; nothing boils and the flow is
// turbulent. Source: SourceKv.
func WaterKv(flowM3H, dropPa, density float64) (float64, error) {
	if err := checkFlow(flowM3H); err != nil {
		return 0, err
	}
	if err := checkWater(dropPa, density); err != nil {
		return 0, err
	}
	return flowM3H * math.Sqrt(density/1000/(dropPa/1e5)), nil
}

// WaterDrop is the drop in Pa of a flow in m3/h through a flow coefficient of
// 1e-4 to 1e5 m3/h.
//
//	dp = (V/Kv)^2 rho/1000 bar
//
// Source: SourceKv.
func WaterDrop(kv, flowM3H, density float64) (float64, error) {
	if err := within.Range("Kv", kv, leastKv, mostKv, "m3/h"); err != nil {
		return 0, err
	}
	if err := checkFlow(flowM3H); err != nil {
		return 0, err
	}
	if err := checkWater(1, density); err != nil {
		return 0, err
	}
	ratio := flowM3H / kv
	return 1e5 * ratio * ratio * density / 1000, nil
}

// WaterFlow is the flow in m3/h of a flow coefficient at a drop of 0.1 Pa to
// 100 bar.
//
//	V = Kv sqrt(dp 1000/rho), dp in bar
//
// Source: SourceKv.
func WaterFlow(kv, dropPa, density float64) (float64, error) {
	if err := within.Range("Kv", kv, leastKv, mostKv, "m3/h"); err != nil {
		return 0, err
	}
	if err := checkWater(dropPa, density); err != nil {
		return 0, err
	}
	return kv * math.Sqrt(dropPa/1e5*1000/density), nil
}

// Gas is the gas before a valve.
type Gas struct {
	Temperature float64 // K, 200 to 600
	MolarMass   float64 // g/mol, 2 to 150
	Exponent    float64 // isentropic, 1.05 to 1.7
	Compression float64 // compression factor Z, 0.5 to 1.2
}

// GasKv is the flow coefficient in m3/h that passes a flow in m3/h at 0 degC
// and 101325 Pa, without fittings at the valve. The inlet is 1e4 to 1e7 Pa
// absolute, the drop less than that, xT the valve's drop ratio at choked flow
// from 0.1 to 1.
//
//	Kv = Q/(24.6 p1 Y) sqrt(M T Z/x),  x = dp/p1,  Y = 1 - x/(3 F xT),  F = k/1.4
//
// From x = F xT on the flow is choked: x stays there and Y at 2/3. Source:
// SourceGasKv.
func GasKv(g Gas, flowM3H, inletPa, dropPa, xT float64) (float64, error) {
	if err := checkGas(g, flowM3H, inletPa, xT); err != nil {
		return 0, err
	}
	if err := within.Range("pressure drop", dropPa, 1e-6*inletPa, inletPa, "Pa"); err != nil {
		return 0, err
	}
	choked := g.Exponent / 1.4 * xT
	x := math.Min(dropPa/inletPa, choked)
	y := 1 - x/(3*choked)
	return flowM3H / (24.6 * inletPa / 1000 * y) * math.Sqrt(g.MolarMass*g.Temperature*g.Compression/x), nil
}

func checkGas(g Gas, flow, inlet, xT float64) error {
	if err := within.Range("gas temperature", g.Temperature, 200, 600, "K"); err != nil {
		return err
	}
	if err := within.Range("molar mass", g.MolarMass, 2, 150, "g/mol"); err != nil {
		return err
	}
	if err := within.Range("isentropic exponent", g.Exponent, 1.05, 1.7, ""); err != nil {
		return err
	}
	if err := within.Range("compression factor", g.Compression, 0.5, 1.2, ""); err != nil {
		return err
	}
	if err := checkFlow(flow); err != nil {
		return err
	}
	if err := within.Range("inlet pressure", inlet, 1e4, 1e7, "Pa"); err != nil {
		return err
	}
	return within.Range("drop ratio at choked flow", xT, 0.1, 1, "")
}

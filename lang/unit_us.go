package lang

// counterparts pairs units of one trade: what a metric reader sees in the first,
// a US reader sees in the second. Not by dimension alone, for gas and water flow
// in units of their own.
var counterparts = map[string]string{
	"mm": "in", "m": "ft", "cm2": "in2", "m2": "ft2", "l": "gal", "m3": "ft3", "kg": "lb", "degC": "degF", "K": "F",
	"kW": "MBH", "Pa": "inWC", "mbar": "inWC", "kPa": "psi", "bar": "psi", "l/h": "gal/h", "l/s": "gpm", "m3/h": "ft3/h",
	"m/s": "ft/s", "mm/m": "in/ft", "W/m": "Btu/hft", "mmol/l": "gr/gal", "kN": "lbf", "N": "lbf",
}

// Counterpart gives the US unit that stands where a metric one does; the same
// symbol where both systems use it.
func Counterpart(symbol string) string {
	if s, ok := counterparts[symbol]; ok {
		return s
	}
	return symbol
}

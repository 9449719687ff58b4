package flue

import "example.org/tundish/check/cite"

// Zeta is the loss coefficient of a flue part on its own velocity head.
type Zeta struct {
	Part   string
	Low    float64
	High   float64
	Use    float64 // taken when the maker gives none, on the safe side
	Source cite.Source
}

var zetas = [...]Zeta{
	{"90 deg bend, smooth", 0.3, 0.6, 0.6, SourceZeta},
	{"90 deg bend, mitered", 1.2, 1.2, 1.2, SourceZeta},
	{"45 deg bend", 0.2, 0.35, 0.35, SourceZeta},
	{"90 deg tee entry", 1.0, 1.0, 1.0, SourceZeta},
}

// Zetas returns the table of loss coefficients.
func Zetas() []Zeta { return append([]Zeta(nil), zetas[:]...) }

// ZetaOf is the loss coefficient of a part by its name in the table.
func ZetaOf(part string) (Zeta, bool) {
	for i := range zetas {
		if zetas[i].Part == part {
			return zetas[i], true
		}
	}
	return Zeta{}, false
}

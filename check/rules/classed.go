package rules

import (
	"strings"

	"example.org/tundish/check/calc/flue"
	"example.org/tundish/check/plant"
)

// classedPieces are the pieces of flues that state a class.
func classedPieces(pl *plant.Plant) []*plant.Part {
	var out []*plant.Part
	for _, k := range [...]string{"connector", "flue-header", "run", "riser"} {
		for _, part := range pl.ByKind(k) {
			if part.Get("class").Known() {
				out = append(out, part)
			}
		}
	}
	return out
}

// pressureClass reads the pressure class out of a code such as T120-P1-W.
func pressureClass(part *plant.Part) (flue.Class, bool) {
	for _, w := range strings.Split(part.Get("class").Word, "-") {
		if c, ok := flue.ClassNamed(w); ok {
			return c, true
		}
	}
	return flue.Class{}, false
}

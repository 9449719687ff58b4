package solve

import (
	"strings"

	"example.org/tundish/check/plant"
)

// openValue names the first of some values that a part states to be unknown: what
// is left out counts as none, but what is unknown does not. Empty when none is.
func openValue(part *plant.Part, slots ...string) string {
	for _, s := range slots {
		if part.Get(s).Open() {
			return "the " + strings.ReplaceAll(s, "-", " ") + " of " + part.Label()
		}
	}
	return ""
}

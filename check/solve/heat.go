package solve

import "example.org/tundish/check/plant"

// netInputOfAll sums the net heat input of all units; missing says what is
// lacking.
func netInputOfAll(p *plant.Plant) (sum float64, missing string) {
	if len(p.Units()) == 0 {
		return 0, "units"
	}
	if p.Damaged("units") {
		return 0, "a file that can be read whole"
	}
	for _, u := range p.Units() {
		heat, ok := NetInput(p, u.Child("input"))
		if !ok {
			return 0, "the heat input of " + u.Label() + " with its basis"
		}
		sum += heat
	}
	return sum, ""
}

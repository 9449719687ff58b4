package rules

import "example.org/tundish/check/plant"

// blanked tells whether one of the blanks closes the dead end of a run.
func blanked(blanks []*plant.Part, run *plant.Part) bool {
	for _, b := range blanks {
		ref, ok := b.Ref("of")
		if !ok || ref.Part != run {
			continue
		}
		if end := b.Get("end"); !end.Given || end.Is("dead-end") {
			return true
		}
	}
	return false
}

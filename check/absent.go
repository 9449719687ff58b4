package check

import "example.org/tundish/check/plant"

// Absent reports that a part lacks something it must have. Where some statement
// of the file cannot be read the thing may only be unreadable; then it is
// Unknown, not a fault.
func (p *Pass) Absent(part *plant.Part, what string, f Finding) {
	if p.Plant.Damaged() {
		p.Unknown(part, "a file that can be read whole, to look for "+what)
		return
	}
	p.Report(part, f)
}

package solve

import (
	"sync"

	"example.org/tundish/check/plant"
)

// scratch is what the solvers of one plant work in. It holds nothing that outlives
// Run, which gives it to the next plant.
type scratch struct {
	outputs  []unitOutput
	circuits []circuit
	curves   []*curvePoints
	sections []gasSection
	flue     flueModel
}

// unitOutput keeps what UnitOutput said of a unit.
type unitOutput struct {
	unit  *plant.Part
	value plant.Value
	exact bool
}

var scratches = sync.Pool{New: func() any { return &scratch{} }}

// room is the scratch of the context; a context that was made for one question has
// one of its own.
func (c *Context) room() *scratch {
	if c.scratch == nil {
		c.scratch = &scratch{}
	}
	return c.scratch
}

// output is UnitOutput, asked once for each unit.
func (c *Context) output(u *plant.Part) (v plant.Value, exact bool) {
	r := c.room()
	for i := range r.outputs {
		if o := &r.outputs[i]; o.unit == u {
			return o.value, o.exact
		}
	}
	v, exact = UnitOutput(c.P, u)
	r.outputs = append(r.outputs, unitOutput{u, v, exact})
	return v, exact
}

package vessel

import (
	"example.org/tundish/check/calc/within"
	"example.org/tundish/check/cite"
)

// Content is the water content of a kind of emitter by its heat output.
type Content struct {
	Emitter   string
	Low, High float64 // l/kW; equal where one figure is known
	Source    cite.Source
}

var contents = [...]Content{
	{"panel radiators", 8, 8, SourceContent},
	{"low-content radiators", 2, 2, SourceContent},
	{"small-bore pipes", 1, 1, SourceContent},
	{"fan coils and air heaters", 4, 6, SourceContent},
	{"old cast-iron radiators", 14, 20, SourceContent},
	{"underfloor heating", 20, 20, SourceContent},
}

// Contents returns the table of water contents by heat output.
func Contents() []Content { return append([]Content(nil), contents[:]...) }

// Liters is the water content in l of emitters of a heat output of 0 to 1e5 kW,
// at the high end of the table. Source: that of the line.
func (c *Content) Liters(outputKW float64) (float64, error) {
	if err := within.Range("heat output", outputKW, 0, 1e5, "kW"); err != nil {
		return 0, err
	}
	return c.High * outputKW, nil
}

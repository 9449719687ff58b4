package pipe

import "example.org/tundish/check/cite"

// SourceSupports is the source of GasSupport.
var SourceSupports = cite.Source{
	Work: "Plumbing Engineering Services Design Guide", Clause: "tables 6 and 7", Read: cite.Published, Note: "horizontal pipes; schedule 40 pipe by the US rule of 6, 8 and 10 ft from trade texts",
}

// span is the greatest distance of supports in m up to a nominal size in m.
type span struct{ upTo, most float64 }

var (
	gasSteel  = []span{{0.015, 2.0}, {0.020, 2.5}, {0.025, 2.5}, {0.032, 2.7}, {0.040, 3.0}, {0.100, 3.0}}
	gasUS     = []span{{0.0127, 6 * 0.3048}, {0.0254, 8 * 0.3048}, {0.2032, 10 * 0.3048}}
	gasCopper = []span{{0.015, 1.2}, {0.028, 1.8}, {0.042, 2.5}, {0.054, 2.7}, {0.108, 3.0}}
)

// GasSupport is the greatest distance in m between the supports of a horizontal
// gas pipe; ok is false for a material or size that the table lacks. Source:
// SourceSupports.
func GasSupport(material string, nominal float64) (meters float64, ok bool) {
	list := gasSteel
	switch material {
	case "copper":
		list = gasCopper
	case "steel", "steel-heavy":
	case "steel-40":
		list = gasUS
	default:
		return 0, false
	}
	for _, s := range list {
		if nominal <= s.upTo+1e-6 {
			return s.most, true
		}
	}
	return 0, false
}

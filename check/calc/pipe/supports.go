package pipe

import "example.org/tundish/check/cite"

// SourceSupports is the source of GasSupport.
var SourceSupports = cite.Source{
	Work: "Plumbing Engineering Services Design Guide", Clause: "tables 6 and 7", Read: cite.Published, Note: "horizontal pipes",
}

// span is the greatest distance of supports in m up to a nominal size in m.
type span struct{ upTo, most float64 }

var (
	gasSteel  = []span{{0.015, 2.0}, {0.020, 2.5}, {0.025, 2.5}, {0.032, 2.7}, {0.040, 3.0}, {0.100, 3.0}}
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

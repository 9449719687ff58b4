// Package pipe holds the tables of pipes: bore, outside diameter, roughness and
// water content by material and nominal size, and how far apart pipes are
// supported. It knows nothing of plants.
package pipe

import (
	"math"
	"strings"

	"example.org/tundish/check/cite"
)

// Sources of the tables.
var (
	SourceSteel = cite.Source{
		Work: "EN 10255", Clause: "medium and heavy series", Read: cite.Memory,
		Note: "specified outside diameters from memory, walls of the medium series read in a public copy of the 1387 table; bore is outside diameter less twice the wall",
	}
	SourceCopper    = cite.Source{Work: "EN 1057", Clause: "R250", Read: cite.Memory, Note: "usual walls; bore is outside diameter less twice the wall"}
	SourceSchedule  = cite.Source{Work: "ASME B36.10M", Clause: "schedule 40", Read: cite.Memory, Note: "inside diameters as printed with the gas tables of the International Fuel Gas Code"}
	SourceRoughness = cite.Source{Work: "roughness of new pipes: steel 0.045 mm, copper and plastic 0.0015 mm", Read: cite.Memory}
	SourcePlastic   = cite.Source{Work: "ISO 4065, SDR 11", Read: cite.Memory, Note: "wall is outside diameter over 11"}
)

// Roughness of new pipes in m. Source: SourceRoughness.
const (
	RoughnessSteel  = 0.045e-3
	RoughnessSmooth = 0.0015e-3
)

// Pipe is one size of one material.
type Pipe struct {
	Material  string
	Size      string  // as a specification writes it: "DN50", "35 mm", "1 1/4 in"
	Nominal   float64 // m, for ordering
	Outside   float64 // m
	Wall      float64 // m
	Roughness float64 // m
	Source    cite.Source
}

// Bore is the inner diameter in m.
func (p *Pipe) Bore() float64 { return p.Outside - 2*p.Wall }

// Content is the volume in m3 of a meter of pipe.
func (p *Pipe) Content() float64 { return math.Pi / 4 * p.Bore() * p.Bore() }

// steelDensity in kg/m3, for the mass of steel pipe.
const steelDensity = 7850

// Mass is the mass in kg of a meter of empty steel pipe; 0 for other materials.
func (p *Pipe) Mass() float64 {
	if !strings.HasPrefix(p.Material, "steel") && p.Material != "stainless" {
		return 0
	}
	return math.Pi * (p.Outside - p.Wall) * p.Wall * steelDensity
}

type row struct {
	size                   string
	nominal, outside, wall float64 // mm
}

var medium = []row{
	{"DN15", 15, 21.3, 2.6},
	{"DN20", 20, 26.9, 2.6},
	{"DN25", 25, 33.7, 3.2},
	{"DN32", 32, 42.4, 3.2},
	{"DN40", 40, 48.3, 3.2},
	{"DN50", 50, 60.3, 3.6},
	{"DN65", 65, 76.1, 3.6},
	{"DN80", 80, 88.9, 4.0},
	{"DN100", 100, 114.3, 4.5},
	{"DN125", 125, 139.7, 5.0},
	{"DN150", 150, 165.1, 5.0},
}

var heavy = []row{
	{"DN15", 15, 21.3, 3.2},
	{"DN20", 20, 26.9, 3.2},
	{"DN25", 25, 33.7, 4.0},
	{"DN32", 32, 42.4, 4.0},
	{"DN40", 40, 48.3, 4.0},
	{"DN50", 50, 60.3, 4.5},
	{"DN65", 65, 76.1, 4.5},
	{"DN80", 80, 88.9, 5.0},
	{"DN100", 100, 114.3, 5.4},
	{"DN125", 125, 139.7, 5.4},
	{"DN150", 150, 165.1, 5.4},
}

var copper = []row{
	{"15 mm", 15, 15, 0.7},
	{"22 mm", 22, 22, 0.9},
	{"28 mm", 28, 28, 0.9},
	{"35 mm", 35, 35, 1.2},
	{"42 mm", 42, 42, 1.2},
	{"54 mm", 54, 54, 1.2},
	{"66.7 mm", 66.7, 66.7, 1.2},
	{"76.1 mm", 76.1, 76.1, 1.5},
	{"88.9 mm", 88.9, 88.9, 2},
	{"108 mm", 108, 108, 2.5},
}

const inch = 25.4

var schedule40 = []row{
	{"1/2 in", 0.5 * inch, 0.840 * inch, 0.109 * inch},
	{"3/4 in", 0.75 * inch, 1.050 * inch, 0.113 * inch},
	{"1 in", inch, 1.315 * inch, 0.133 * inch},
	{"1 1/4 in", 1.25 * inch, 1.660 * inch, 0.140 * inch},
	{"1 1/2 in", 1.5 * inch, 1.900 * inch, 0.145 * inch},
	{"2 in", 2 * inch, 2.375 * inch, 0.154 * inch},
	{"2 1/2 in", 2.5 * inch, 2.875 * inch, 0.203 * inch},
	{"3 in", 3 * inch, 3.500 * inch, 0.216 * inch},
	{"4 in", 4 * inch, 4.500 * inch, 0.237 * inch},
	{"5 in", 5 * inch, 5.563 * inch, 0.258 * inch},
	{"6 in", 6 * inch, 6.625 * inch, 0.280 * inch},
	{"8 in", 8 * inch, 8.625 * inch, 0.322 * inch},
}

var plastic = []row{
	{"20 mm", 20, 20, 20. / 11},
	{"25 mm", 25, 25, 25. / 11},
	{"32 mm", 32, 32, 32. / 11},
	{"40 mm", 40, 40, 40. / 11},
	{"50 mm", 50, 50, 50. / 11},
	{"63 mm", 63, 63, 63. / 11},
	{"75 mm", 75, 75, 75. / 11},
	{"90 mm", 90, 90, 90. / 11},
	{"110 mm", 110, 110, 10},
	{"125 mm", 125, 125, 125. / 11},
	{"160 mm", 160, 160, 160. / 11},
	{"180 mm", 180, 180, 180. / 11},
}

var tables = map[string][]Pipe{
	"steel":         build("steel", medium, RoughnessSteel, SourceSteel),
	"steel-heavy":   build("steel-heavy", heavy, RoughnessSteel, SourceSteel),
	"stainless":     build("stainless", medium, RoughnessSteel, SourceSteel),
	"copper":        build("copper", copper, RoughnessSmooth, SourceCopper),
	"steel-40":      build("steel-40", schedule40, RoughnessSteel, SourceSchedule),
	"polyethylene":  build("polyethylene", plastic, RoughnessSmooth, SourcePlastic),
	"polypropylene": build("polypropylene", plastic, RoughnessSmooth, SourcePlastic),
	"plastic":       build("plastic", plastic, RoughnessSmooth, SourcePlastic),
}

func build(material string, rows []row, roughness float64, src cite.Source) []Pipe {
	out := make([]Pipe, len(rows))
	for i, r := range rows {
		out[i] = Pipe{material, r.size, r.nominal / 1000, r.outside / 1000, r.wall / 1000, roughness, src}
	}
	return out
}

// Sizes lists the sizes of a material, smallest first; nil for a material
// without a table. The slice is shared.
func Sizes(material string) []Pipe { return tables[material] }

// Find gives the pipe of a material with a nominal size in m (0.050 for DN50,
// 0.035 for 35 mm); nil when the table has no such size.
func Find(material string, nominal float64) *Pipe {
	list := tables[material]
	for i := range list {
		if math.Abs(list[i].Nominal-nominal) < 1e-4 {
			return &list[i]
		}
	}
	return nil
}

// Above gives the next larger size of the same material; nil for the largest.
func (p *Pipe) Above() *Pipe {
	list := tables[p.Material]
	for i := range list {
		if list[i].Nominal > p.Nominal+1e-6 {
			return &list[i]
		}
	}
	return nil
}

package pipe

import "example.org/tundish/check/cite"

// SourceWaterSupports is the source of WaterSupport.
var SourceWaterSupports = cite.Source{
	Work: "spacing of supports of heating pipes, as in plumbing textbooks", Read: cite.Published,
	Note: "horizontal pipes; a size between two rows takes the smaller distance",
}

// Rows as printed; a size between two rows takes the row below it.
var (
	waterSteel  = []span{{0.015, 1.8}, {0.020, 2.4}, {0.025, 2.4}, {0.032, 2.7}, {0.040, 3.0}, {0.050, 3.0}, {0.080, 3.6}}
	waterCopper = []span{{0.015, 1.2}, {0.022, 1.8}, {0.028, 1.8}, {0.035, 2.4}, {0.042, 2.4}, {0.054, 2.7}}
)

// WaterSupport is the greatest distance in m between the supports of a
// horizontal heating pipe of a nominal size in m; ok is false for a material or
// a size below the table. Source: SourceWaterSupports.
func WaterSupport(material string, nominal float64) (meters float64, ok bool) {
	var list []span
	switch material {
	case "copper":
		list = waterCopper
	case "steel", "steel-heavy", "steel-40":
		list = waterSteel
	}
	for _, s := range list {
		if nominal >= s.upTo*0.95 { // 1 1/4 in is 31.75 mm, 3 in is 76.2 mm
			meters, ok = s.most, true
		}
	}
	return meters, ok
}

package rules

import (
	"strconv"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// flueSizes are the common nominal bores of plastic and steel flues in mm:
// common practice, no source.
var flueSizes = [...]int{60, 80, 100, 110, 125, 150, 160, 180, 200, 225, 250, 300, 350, 400, 450, 500}

// nextFlueSize offers to take header and riser of the unit's flue one size up.
func nextFlueSize(p *check.Pass, unit *plant.Part) []lang.Fix {
	var edits []lang.Edit
	title := ""
	for _, fl := range p.Plant.ByKind("flue") {
		mine := false
		for _, c := range fl.Children("connector") {
			if ref, ok := c.Ref("from"); ok && ref.Part == unit {
				mine = true
			}
		}
		if !mine {
			continue
		}
		for _, part := range fl.Parts {
			switch part.Kind {
			case "flue-header", "riser", "run", "bend", "blank":
			default:
				continue
			}
			v := part.Get("size")
			if !v.Known() || v.Field == nil {
				continue
			}
			if next := sizeAbove(v.Num); next > 0 {
				text := "DN" + strconv.Itoa(next)
				edits = append(edits, lang.Edit{Span: part.Stmt.Abs(v.Field.Values[0].Expr.Span), NewText: text})
				title = "Take " + fl.Label() + " one size up, to " + text
			}
		}
	}
	if len(edits) == 0 {
		return nil
	}
	return []lang.Fix{{Title: title, Edits: edits, Best: true}}
}

func sizeAbove(bore float64) int {
	for _, s := range flueSizes {
		if float64(s)/1000 > bore+1e-9 {
			return s
		}
	}
	return 0
}

package rules

import (
	"strconv"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/tables"
	"example.org/tundish/lang"
)

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

// sizeAbove is the next usual bore of a flue in mm; 0 when there is none.
func sizeAbove(bore float64) int {
	v, _ := tables.StandardSizes("flue-bore").Above(bore)
	return int(v)
}

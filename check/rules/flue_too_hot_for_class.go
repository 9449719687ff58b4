package rules

import (
	"strings"

	"example.org/tundish/check"
	"example.org/tundish/check/calc/flue"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleFlueTooHotForClass)

var ruleFlueTooHotForClass = check.Rule{
	ID: "flue-too-hot-for-class", Group: check.Flue, Severity: lang.Error, Since: "0.1",
	Summary: "A unit may send hotter products into a flue than its class stands.",
	Why:     "A plastic flue softens, sags and opens at its joints.",
	Mend:    "take a unit with a lower flue limiter or a flue of a higher temperature class",
	Sources: sources(flue.SourceTemperatureClasses),
	Run: func(p *check.Pass) {
		for _, part := range classedPieces(p.Plant) {
			limit, name := 0.0, ""
			for _, w := range strings.Split(part.Get("class").Word, "-") {
				if t, ok := flue.TemperatureClass(w); ok {
					limit, name = t, w
				}
			}
			if name == "" {
				continue
			}
			for _, u := range unitsBefore(part) {
				v := u.Child("flue-data").Get("limiter")
				if !v.Known() {
					p.Unknown(u, "the flue limiter of "+u.Label())
					continue
				}
				if v.Num <= limit {
					continue
				}
				p.Report(part, check.Finding{
					Span: part.Get("class").Span(), Found: p.In(v.Num, "degC"), Limit: "at most " + p.In(limit, "degC"),
					Message: part.Label() + " is for products of up to " + p.In(limit, "degC") + " (" + name + "), but the flue limiter of " + u.Label() + " acts at " + p.In(v.Num, "degC") + ".",
				})
				break
			}
		}
	},
}

// unitsBefore are the units whose products a piece takes: those that it comes
// from, else those on its flue, else all, where the flue does not say.
func unitsBefore(part *plant.Part) []*plant.Part {
	for _, pieces := range [...][]*plant.Part{{part}, part.Owner.Parts} {
		var units []*plant.Part
		for _, piece := range pieces {
			for _, ref := range piece.Refs("from") {
				if ref.Part.Kind == "unit" {
					units = append(units, ref.Part)
				}
			}
		}
		if len(units) > 0 {
			return units
		}
	}
	return part.Plant().Units()
}

package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/ventilation"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleRoomOnlyExtracted)

var ruleRoomOnlyExtracted = check.Rule{
	ID: "room-only-extracted", Group: check.Air, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "Fans only extract air from the room.",
	Why:     "They pull products out of flues and units.",
	Mend:    "add a supply fan",
	Sources: sources(ventilation.SourceBS6644),
	Run: func(p *check.Pass) {
		block := p.Plant.Block("air")
		supply, open := false, ""
		var extract *plant.Part
		for _, f := range block.Children("fan") {
			switch kind := f.Get("kind"); {
			case kind.Is("supply"):
				supply = true
			case kind.Is("extract"):
				extract = f
			case kind.Open():
				open = f.Label()
			}
		}
		switch {
		case extract == nil || supply:
		case open != "":
			p.Unknown(extract, "which way "+open+" moves air")
		default:
			p.Absent(extract, "a supply fan", check.Finding{Message: extract.Label() + " extracts air, and no fan supplies any."})
		}
	},
}

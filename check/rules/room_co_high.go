package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/lang"
)

var _ = register(&ruleRoomCoHigh)

var ruleRoomCoHigh = check.Rule{
	ID: "room-co-high", Group: check.Record, Severity: lang.Warning, Device: true, Since: "0.2",
	Summary: "The room holds carbon monoxide.",
	Why:     "Somebody may die there.",
	Mend:    "stop the plant, air the room, find the cause",
	Sources: sources(sourceRecord),
	Run: func(p *check.Pass) {
		v := recorded(p, "settings").Child("room-co").Get("co")
		if most := p.Limit("room-co-most"); v.Known() && v.Num > most.Num*(1+1e-9) {
			p.Report(p.Plant.Block("settings").Child("room-co"), check.Finding{Span: v.Span(), Found: p.In(v.Num, "ppm"), Limit: "at most " + most.Text(), Source: most.Source, Message: "The air of the room holds " + p.In(v.Num, "ppm") + " of carbon monoxide."})
		}
	},
}

package rules

import (
	"strings"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleSettingMissing)

var ruleSettingMissing = check.Rule{
	ID: "setting-missing", Group: check.Record, Severity: lang.Warning, Since: "0.2",
	Summary: "A plant was handed over without a setting or a sample that shows how it was left.",
	Why:     "Next year nobody can tell what has changed.",
	Mend:    "measure it and enter it",
	Limits:  "Asks only for what the design has: its vessels, fill pressures and water quality; and for the carbon monoxide in the room.",
	Sources: sources(sourceRecord),
	Run: func(p *check.Pass) {
		h := recorded(p, "handed-over")
		if h == nil || len(p.Plant.ByKind("commissioned")) == 0 || noDesign(p, h) {
			return
		}
		st := recorded(p, "settings")
		safety := p.Plant.Of.Block("safety")
		measured := map[*plant.Part]bool{}
		for _, c := range st.Children("precharge") {
			measured[c.Subject()] = true
		}
		var lacks []string
		for _, v := range safety.Children("vessel") {
			if !measured[v] {
				lacks = append(lacks, "the precharge of "+v.Label())
			}
		}
		if len(st.Children("fill")) < len(safety.Children("fill")) {
			lacks = append(lacks, "the cold fill pressure of each circuit")
		}
		if st.Child("room-co") == nil {
			lacks = append(lacks, "the carbon monoxide in the room")
		}
		if p.Plant.Of.Block("water-quality") != nil && len(p.Plant.ByKind("water-sample")) == 0 {
			lacks = append(lacks, "a water sample")
		}
		if len(lacks) == 0 {
			return
		}
		at := st
		if at == nil {
			at = h
		}
		p.Absent(at, "the settings", check.Finding{Message: "Not recorded: " + strings.Join(lacks, ", ") + "."})
	},
}

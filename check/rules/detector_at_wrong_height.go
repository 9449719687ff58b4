package rules

import (
	"strings"

	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleDetectorAtWrongHeight)

var ruleDetectorAtWrongHeight = check.Rule{
	ID: "detector-at-wrong-height", Group: check.Air, Severity: lang.Error, Since: "0.1",
	Summary: "A gas detector hangs where its gas does not collect.",
	Why:     "It hears of the leak last.",
	Mend:    "hang methane detectors at the ceiling, propane at the floor, carbon monoxide at breathing height",
	Sources: sources(cite.Source{Work: "methane is lighter than air, propane heavier", Read: cite.Published, Note: "physics; relative densities 0.55 and 1.55"}),
	Run: func(p *check.Pass) {
		middle := p.Limit("detector-low-below")
		for _, d := range p.Plant.ByKind("detector") {
			gas, place, height := d.Get("gas"), d.Get("place"), d.Get("height")
			at, low := place.Word, height.Known() && height.Num < middle.Num*(1-1e-9)
			if !place.Known() {
				at = p.In(height.Num, "m") + " above-floor"
			}
			wrong, want := "", ""
			switch {
			case gas.Is("natural-gas"):
				want = "ceiling"
				if place.Is("floor") || low {
					wrong = at
				}
			case gas.Is("propane"):
				want = "floor"
				if place.Is("ceiling") || height.Known() && !low {
					wrong = at
				}
			case gas.Is("carbon-monoxide"):
				want = "1.5 m above-floor"
				if place.Is("floor") || low {
					wrong = at
				}
			}
			switch {
			case !gas.Known():
				p.Unknown(d, "the gas that "+d.Label()+" detects")
				continue
			case !place.Known() && !height.Known():
				p.Unknown(d, "where "+d.Label()+" hangs")
				continue
			case wrong == "":
				continue
			}
			f := check.Finding{Found: wrong, Limit: want, Message: d.Label() + " watches for " + strings.ReplaceAll(gas.Word, "-", " ") + " " + where(wrong) + ", where it does not collect first; hang it " + where(want) + "."}
			if f.Span = place.Span(); !place.Known() {
				f.Span = height.Span()
			}
			if !place.Known() || gas.Is("carbon-monoxide") { // no law of nature says from which height on
				f.Source = middle.Source
			}
			f.Fixes = []lang.Fix{{Title: "Hang it at " + want, Best: true, Edits: []lang.Edit{{Span: f.Span, NewText: want}}}}
			p.Report(d, f)
		}
	},
}

// where says a place of a detector in a sentence.
func where(place string) string {
	if height, ok := strings.CutSuffix(place, " above-floor"); ok {
		return height + " above the floor"
	}
	return "at the " + place
}

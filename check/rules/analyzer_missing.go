package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/lang"
)

var _ = register(&ruleAnalyzerMissing)

var ruleAnalyzerMissing = check.Rule{
	ID: "analyzer-missing", Group: check.Record, Severity: lang.Error, Since: "0.2",
	Summary: "It is not said with which analyzer the flue gas was measured, or the instrument named is none.",
	Why:     "Readings without a calibrated instrument prove nothing.",
	Mend:    "name the analyzer with its calibration",
	Sources: sources(sourceExamine),
	Run: func(p *check.Pass) {
		for _, kind := range [...]string{"commissioned", "log"} {
			for _, b := range p.Plant.ByKind(kind) {
				with, ok := b.Ref("with")
				switch {
				case ok && with.Part.Get("kind").Is("analyser"):
				case ok && !with.Part.Get("kind").Known():
					p.Unknown(b, "what kind of instrument "+with.Part.Label()+" is")
				case ok:
					p.Report(b, check.Finding{Part: with.Part.Label(), Span: b.Get("with").Span(), Found: with.Part.Get("kind").Word, Limit: "analyser", Message: "For the " + named(b) + " the flue gas was measured with " + with.Part.Label() + ", which is a " + with.Part.Get("kind").Word + "."})
				case b.Get("with").Open():
					p.Unknown(b, "the analyzer of the "+named(b))
				case !b.Get("with").Given && (kind == "commissioned" || b.Child("reading") != nil):
					p.Absent(b, "the analyzer", check.Finding{Part: named(b), Message: "For the " + named(b) + " no analyzer is named."})
				}
			}
		}
	},
}

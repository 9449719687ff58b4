package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleCalibrationExpired)

var ruleCalibrationExpired = check.Rule{
	ID: "calibration-expired", Group: check.Record, Severity: lang.Error, Since: "0.2",
	Summary: "An instrument was out of its calibration when it was read.",
	Why:     "Nobody knows whether its readings are true.",
	Mend:    "read again with a calibrated instrument",
	Sources: sources(sourceAnalyser),
	Run: func(p *check.Pass) {
		most := p.Limit("calibration-months-most")
		check1 := func(at *plant.Part) {
			ref, ok := at.Ref("with")
			when, dated := day(at, "date")
			if !ok || !dated {
				return
			}
			cal, known := day(ref.Part, "calibrated")
			if !known {
				p.Unknown(at, "the calibration date of "+ref.Part.Label())
				return
			}
			switch {
			case when.Before(cal):
				p.Report(at, check.Finding{Part: ref.Part.Label(), Found: cal.String(), Limit: "not after " + when.String(), Message: ref.Part.Label() + " was calibrated on " + cal.String() + ", after it was used on " + when.String() + "."})
			case when.Days()-cal.Days() > int(most.Num*30.4375+1):
				p.Report(at, check.Finding{Part: ref.Part.Label(), Found: cal.String(), Limit: "within " + lang.Num(most.Num, 3) + " months", Source: most.Source, Message: ref.Part.Label() + " was calibrated on " + cal.String() + ", more than " + lang.Num(most.Num, 3) + " months before " + when.String() + "."})
			}
		}
		for _, kind := range [...]string{"commissioned", "log"} {
			for _, c := range p.Plant.ByKind(kind) {
				check1(c)
			}
		}
		for _, s := range recorded(p, "tested").Children("tightness") {
			check1(s)
		}
	},
}
